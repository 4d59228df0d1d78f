import type { JobLine } from '../job/job'
import type { SweepSoFar } from './slot'

/** The sweep that recordings go on with: the last one that was recorded here, or else one of its own, named by number. */
export function recordInto({ sweeps, removedClips = [] }: JobLine): string {
  const recorded = sweeps.filter(({ clips }) => clips.some(({ recording }) => recording !== undefined))
  return recorded.at(-1)?.name ?? freeSweepName(sweeps, removedClips)
}

/** The next number that no sweep of a line has, nor had. */
export function freeSweepName(sweeps: JobLine['sweeps'], removedClips: JobLine['removedClips'] = []): string {
  const names = new Set([...sweeps.map(({ name }) => name), ...removedClips.map(({ row }) => row.sweep)])
  for (let number = 1; ; number++) if (!names.has(String(number))) return String(number)
}

/** What there is of a sweep of a line. */
export function sweepSoFar({ sweeps, removedClips = [] }: JobLine, name: string): SweepSoFar {
  return {
    clips: sweeps.find((sweep) => sweep.name === name)?.clips ?? [],
    removed: removedClips.filter(({ row }) => row.sweep === name),
  }
}
