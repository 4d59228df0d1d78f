import type { Job, JobLine } from '../job/job'
import { sentence } from '../words/sentence'

/** What a report is of: the job's name, and the line's where it has one. */
export function reportName(job: Pick<Job, 'name' | 'id'>, line: Pick<JobLine, 'name'>): string {
  const name = job.name === '' ? job.id : job.name
  return line.name === '' ? name : sentence('label_report_name', { job: name, line: line.name })
}
