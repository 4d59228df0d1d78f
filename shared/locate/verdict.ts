import { depthAt } from '../line/depthAt'
import type { Reason, Verdict } from './answer'
import type { Facts } from './facts'
import { doubtingEnds } from './scanLine'
import { massBetween } from './window'

/** Below this probability of any source the verdict is `no leak heard`: anyhow, and where the likeliest one is faint. Calibrated. */
const HEARD = { anyhow: 0.15, faint: 0.5 }
/** A source this little over the floor at every point, in its best band, is faint, dB. Chosen. */
const FAINT_DB = 4
/** From this probability of a source on a place can be `located`. Calibrated. */
const SURE = 0.85
/** Plain is what bubbles, or stands so far over the same place with the air off, dB. Chosen. */
const PLAIN_DB = 10
/** More than this share of the density past an end of the line is not `located`. Chosen. */
const PAST_END_SHARE = 0.2
/** How much the rings must speak for a place that no air-off clip makes plain, nepers. Calibrated on the synthetic yard. */
const RINGS_NEEDED = 0.3
/** Further against the place than this the rings may never speak: what bubbles out can be heard to. Calibrated. */
const RINGS_AGAINST = -4

/**
 * Says only what is known.
 *
 * @returns The verdict and what decided it, the weightiest first.
 */
export function judge(facts: Facts): { verdict: Verdict; why: Reason[] } {
  const { candidate, grid, range, scan, spacingM } = facts
  if (candidate.probability < (isFaint(facts) ? HEARD.faint : HEARD.anyhow)) {
    return {
      verdict: 'no leak heard',
      why: [{ key: 'reason_no_source_needed', values: { probability: candidate.probability } }],
    }
  }
  const why: Reason[] = []
  const { depthM } = depthAt(facts.line, candidate.alongM)
  const widestM = Math.max(2 * spacingM, 2 * depthM)
  const widthM = candidate.windowM[1] - candidate.windowM[0]
  if (candidate.probability < SURE) {
    why.push({ key: 'reason_weak_source', values: { probability: candidate.probability } })
  }
  if (widthM > widestM) why.push({ key: 'reason_wide_window', values: { width_m: widthM, widest_m: widestM } })
  const perM = doubtingEnds(facts, scan.perM)
  const pastStart = massBetween(grid, perM, grid[0]!, range[0])
  const pastEnd = massBetween(grid, perM, range[1], grid[grid.length - 1]!)
  if (pastStart + pastEnd > PAST_END_SHARE) {
    why.push({
      key: pastStart > pastEnd ? 'reason_past_start' : 'reason_past_end',
      values: { share: pastStart + pastEnd },
    })
  }
  why.push(...notPlain(facts))
  return { verdict: why.length === 0 ? 'located' : 'unsure', why }
}

/** Why a source is not plain to hear: it neither rings nor stands well over the same place with the air off. */
function notPlain(facts: Facts): Reason[] {
  const { ringSupport } = facts
  if (ringSupport >= RINGS_NEEDED) return []
  if (ringSupport < RINGS_AGAINST || !airOffSpeaks(facts)) {
    return [{ key: 'reason_no_bubbling', values: { bubbling: bubblingNear(facts) } }]
  }
  const overFloorDb = overFloorNear(facts)
  return overFloorDb >= PLAIN_DB ? [] : [{ key: 'reason_not_plain', values: { over_floor_db: overFloorDb } }]
}

function isFaint({ scan }: Facts): boolean {
  const best = scan.tried.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a))
  return best.fit.overFloorDb.every((overDb) => overDb < FAINT_DB)
}

/** True when a point within a spacing of the candidate was also taken with the air off. */
function airOffSpeaks({ model, candidate, spacingM }: Facts): boolean {
  return model.settings.some((setting) => setting.off && Math.abs(setting.alongM - candidate.alongM) <= spacingM)
}

/** The most that a point within a spacing of the candidate stands over its floor, dB. */
function overFloorNear({ points, candidate, spacingM }: Facts): number {
  return points.reduce(
    (most, { alongM, evidence }) =>
      Math.abs(alongM - candidate.alongM) <= spacingM ? Math.max(most, evidence.overFloorDb ?? 0) : most,
    0,
  )
}

/** Most bubbling at the points within one and a half spacings of the candidate, 0 to 1. */
export function bubblingNear({ points, candidate, spacingM }: Facts): number {
  return points.reduce(
    (most, { alongM, evidence }) =>
      Math.abs(alongM - candidate.alongM) <= 1.5 * spacingM ? Math.max(most, evidence.bubbling ?? 0) : most,
    0,
  )
}
