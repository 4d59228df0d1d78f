import type { BandEvidence, ClipEvidence } from '../evidence/evidence'
import type { Line } from '../line/line'
import { stretchAt } from '../line/stretchAt'
import type { Sounding } from './answer'
import type { BandRow, SettingDown } from './settingDown'

/** Bands that weigh on the place: 100 Hz to 2.5 kHz. Below, phones filter; from 3 kHz on it is airborne. */
export const LOWEST_BAND_HZ = 95
export const HIGHEST_BAND_HZ = 2600

/** What a weak clip counts for, as a share of a good one. Chosen: half the information. */
const WEAK_CLIP_WEIGHT = 0.5

/** True when nothing set the clip aside. */
export function isUsable(sounding: Sounding): boolean {
  return (
    sounding.evidence !== null &&
    ![...sounding.problems, ...sounding.evidence.problems].some((problem) => problem.severity === 'spoilt')
  )
}

/**
 * Groups usable clips into settings-down: clips of one point, take and sweep share one when the sheet has takes; every
 * other clip is its own.
 *
 * @returns In rising order of along, then point, sweep, take and air, so that the order of the sheet's rows plays no part.
 */
export function settingsDown(soundings: readonly Sounding[], line: Line, sweeps: readonly string[]): SettingDown[] {
  const usable = soundings.filter(isUsable).sort(bySheetOrder)
  const groups = new Map<string, Sounding[]>()
  for (const [index, sounding] of usable.entries()) {
    const { point, take, sweep, sharedTake } = sounding.row
    const key = sharedTake ? JSON.stringify([point, take, sweep]) : `row ${index}`
    groups.set(key, [...(groups.get(key) ?? []), sounding])
  }
  const walkOf = walkTimes(usable)
  return [...groups.values()].map((clips) => {
    const { row } = clips[0]!
    const on = clips.find((clip) => clip.row.air === 'on') ?? null
    const off = clips.find((clip) => clip.row.air === 'off') ?? null
    return {
      point: row.point,
      alongM: row.alongM,
      offsetM: row.offsetM,
      cover: stretchAt(line, row.alongM)?.cover ?? 'soil',
      stretch: line.stretches.indexOf(stretchAt(line, row.alongM)!),
      sweepIndex: sweeps.indexOf(row.sweep),
      walk: walkOf(on ?? off!),
      on: on && bandRow(on.evidence!),
      off: off && bandRow(off.evidence!),
      rings: on && {
        ratePerS: on.evidence!.rings.ratePerS,
        listenedS: on.evidence!.durationS,
        bubbling: on.evidence!.bubbling,
      },
      detectedNepers: on?.detected?.nepers ?? null,
    }
  })
}

function bySheetOrder(a: Sounding, b: Sounding): number {
  return (
    a.row.alongM - b.row.alongM ||
    a.row.point - b.row.point ||
    (a.row.sweep < b.row.sweep ? -1 : a.row.sweep > b.row.sweep ? 1 : 0) ||
    a.row.take - b.row.take ||
    (a.row.air < b.row.air ? 1 : a.row.air > b.row.air ? -1 : 0) ||
    (a.row.file < b.row.file ? -1 : 1)
  )
}

/** The evidence's bands that weigh. */
export function weighedBands(evidence: ClipEvidence): BandEvidence[] {
  return evidence.bands.filter((band) => band.midHz > LOWEST_BAND_HZ && band.midHz < HIGHEST_BAND_HZ)
}

function bandRow(evidence: ClipEvidence): BandRow {
  const bands = weighedBands(evidence)
  const clipWeight = evidence.problems.some((problem) => problem.severity === 'weak') ? WEAK_CLIP_WEIGHT : 1
  const level = (band: BandEvidence) => band.steadyDbFs ?? band.levelDbFs
  return {
    levelDb: Float64Array.from(bands, (band) => level(band) ?? 0),
    weight: Float64Array.from(bands, (band) => (level(band) === null ? 0 : clipWeight)),
  }
}

/** Maps each clip to its place in its sweep's walk, −0.5 to 0.5, when every clip of the sweep has a time. */
function walkTimes(usable: readonly Sounding[]): (sounding: Sounding) => number {
  const ranges = new Map<string, { first: number; last: number } | null>()
  for (const { row } of usable) {
    const range = ranges.get(row.sweep)
    if (row.timeS === null || range === null) ranges.set(row.sweep, null)
    else if (range === undefined) ranges.set(row.sweep, { first: row.timeS, last: row.timeS })
    else {
      range.first = Math.min(range.first, row.timeS)
      range.last = Math.max(range.last, row.timeS)
    }
  }
  return ({ row }) => {
    const range = ranges.get(row.sweep)
    if (!range || row.timeS === null || range.last === range.first) return 0
    return (row.timeS - range.first) / (range.last - range.first) - 0.5
  }
}
