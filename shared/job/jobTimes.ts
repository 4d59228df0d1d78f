import type { JobLine } from './job'

/** When what happened, s since 1970-01-01 UTC; `null`: not yet. */
export interface JobTimes {
  readonly arrivedS: number
  readonly foundS: number | null
  readonly mendedS: number | null
  readonly closedS: number | null
}

/**
 * The times of a line's job, which come by themselves: its start, the first finding of damage, the joint, and its closing.
 *
 * @param createdS When the job was begun.
 */
export function jobTimes(createdS: number, { found = [], mend }: Pick<JobLine, 'found' | 'mend'>): JobTimes {
  const times = found.filter(({ alongM }) => alongM !== null).map(({ timeS }) => timeS)
  return {
    arrivedS: createdS,
    foundS: times.length === 0 ? null : Math.min(...times),
    mendedS: mend?.joint.startS ?? null,
    closedS: mend?.closedS ?? null,
  }
}
