import { median } from '../base/statistics'
import type { Job } from '../job/job'
import type { Opinion } from '../job/opinions'

/** How one reviewer's opinions did where the leak was found. */
export interface ReviewerRecord {
  /** Opinions with a place on lines where the damage was found since. */
  readonly placed: number
  /** Middle distance from the place said to the damage, m; `null` of none. */
  readonly medianErrorM: number | null
  /** Of the windows, how many held the damage. */
  readonly held: number
  /** How many would have, if each window kept just what its confidence promised. */
  readonly promised: number
  /** Mean squared distance of confidence from what came (1 held, 0 not): 0 is best, 0.25 is a coin; `null` of none. */
  readonly brier: number | null
  /** Opinions of "cannot hear it" on such lines: neither right nor wrong. */
  readonly notHeard: number
}

/**
 * A reviewer's own record, over all lines on which damage was found by opening the ground after the opinion was given.
 * Opinions given after something had been found do not count, nor do those that had seen the machine's answer.
 *
 * @param isTheirs Which opinions are the reviewer's.
 * @see G. W. Brier 1950, "Verification of forecasts expressed in terms of probability". [Brier1950]
 */
export function reviewerRecord(jobs: readonly Job[], isTheirs: (opinion: Opinion) => boolean): ReviewerRecord {
  const results = jobs.flatMap((job) => (job.opinions ?? []).filter(isTheirs).flatMap((each) => resultOf(job, each)))
  const placed = results.flatMap((result) => (result === 'not heard' ? [] : [result]))
  const errors = placed.map(({ errorM }) => errorM)
  return {
    placed: placed.length,
    medianErrorM: errors.length === 0 ? null : median(errors),
    held: placed.filter(({ held }) => held).length,
    promised: placed.reduce((sum, { confidence }) => sum + confidence, 0),
    brier: brierScore(placed.map(({ confidence, held }) => ({ chance: confidence, came: held }))),
    notHeard: results.length - placed.length,
  }
}

/**
 * Brier score of chances that something comes: the mean of (chance − 1)² where it came and chance² where it did not.
 *
 * @returns 0 to 1; `null` of none.
 */
export function brierScore(forecasts: readonly { readonly chance: number; readonly came: boolean }[]): number | null {
  if (forecasts.length === 0) return null
  return forecasts.reduce((sum, { chance, came }) => sum + (chance - Number(came)) ** 2, 0) / forecasts.length
}

type Result = { readonly errorM: number; readonly held: boolean; readonly confidence: number } | 'not heard'

function resultOf(job: Job, opinion: Opinion): Result[] {
  const line = job.lines.find(({ id }) => id === opinion.lineId)
  const damage = (line?.found ?? []).filter(({ alongM, way }) => alongM !== null && way === 'opened')
  if (damage.length === 0 || opinion.seen.answer || damage.some(({ timeS }) => timeS <= opinion.timeS)) return []
  if (opinion.alongM === null || opinion.windowM === null || opinion.confidence === null) {
    return opinion.says === 'cannot hear it' ? ['not heard'] : []
  }
  const [fromM, toM] = opinion.windowM
  const errors = damage.map(({ alongM }) => Math.abs(alongM! - opinion.alongM!))
  const held = damage.some(({ alongM }) => alongM! >= fromM && alongM! <= toM)
  return [{ errorM: Math.min(...errors), held, confidence: opinion.confidence }]
}
