import { FormatError } from '../base/errors'
import type { Job } from '../job/job'
import { type MergedJob, mergeJobs } from '../job/merge/mergeJobs'
import type { Opinion } from '../job/opinions'

/**
 * The job with opinions that came back. The job's own date of change stays: an opinion changes nothing of the job.
 *
 * @throws {FormatError} opinions of another job, or of a line that is not in it.
 */
export function withOpinions(job: Job, opinions: readonly Opinion[], fileName: string): MergedJob {
  const stray = opinions.find((opinion) => opinion.jobId !== job.id)
  if (stray !== undefined) throw new FormatError(fileName, '', 'holds opinions of another job; open that job first')
  const lost = opinions.find((opinion) => job.lines.every(({ id }) => id !== opinion.lineId))
  if (lost !== undefined) throw new FormatError(fileName, '', 'holds an opinion of a line that this job does not have')
  return mergeJobs(job, { ...job, opinions }, fileName)
}
