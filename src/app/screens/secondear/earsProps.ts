import type { Job, JobLine } from '../../../../shared/job/job'

/** A line of the open job, to be heard by somebody else. */
export interface EarsProps {
  readonly job: Job
  readonly line: JobLine
}
