import type { Stretch } from '../line/line'

/** A piece shorter than this is not worth telling, m. */
const LEAST_M = 0.01

/**
 * The stretches with one more laid over them: what lies under it is cut away, so that every place has one cover.
 *
 * @returns In order along the line.
 */
export function stretchesWith(stretches: readonly Stretch[], laid: Stretch): Stretch[] {
  const rest = stretches.flatMap((old) => {
    if (old.toM <= laid.fromM || old.fromM >= laid.toM) return [old]
    const before = { ...old, toM: laid.fromM }
    const after = { ...old, fromM: laid.toM }
    return [before, after].filter(({ fromM, toM }) => toM - fromM >= LEAST_M)
  })
  return [...rest, laid].sort((a, b) => a.fromM - b.fromM)
}
