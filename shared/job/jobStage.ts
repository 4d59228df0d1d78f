import type { Job, JobLine } from './job'

/** How far a job has come, in the order in which it goes. */
export const JOB_STAGES = ['begun', 'heard', 'confirmed', 'found', 'closed'] as const

export type JobStage = (typeof JOB_STAGES)[number]

/** The stage of the line that is least far; a job without a line is begun. */
export function jobStage({ lines }: Pick<Job, 'lines'>): JobStage {
  const least = Math.min(...lines.map((line) => JOB_STAGES.indexOf(lineStage(line))))
  return JOB_STAGES[least] ?? 'begun'
}

function lineStage({ mend, found = [], confirmations, sweeps }: JobLine): JobStage {
  if ((mend?.closedS ?? null) !== null) return 'closed'
  if (found.length > 0) return 'found'
  if (confirmations.at(-1)?.says === 'yes') return 'confirmed'
  return sweeps.some(({ clips }) => clips.length > 0) ? 'heard' : 'begun'
}
