import type { Problem } from '../base/problem'
import { Random } from '../base/random'
import { mean } from '../base/statistics'
import { powerToDb } from '../base/units'
import type { BandEvidence, ClipEvidence } from '../evidence/evidence'
import { frameLevels } from '../spectrum/frameLevels'
import { type Vouched, vouchedFrames } from '../spectrum/vouchedFrames'
import type { SweepRow } from '../sweep/sweep'
import { drawnRings } from './drawnRings'
import type { FrameGrid } from './frameGrid'
import { type FramePowers, framePowers, scattered } from './framePowers'
import { EVIDENCE_BANDS, totalPower } from './grid'
import { clipParts } from './parts'
import { ridingGain } from './ridingGain'
import { clipDurationS } from './spoils'
import type { ClipPlan, Spoil, Yard } from './yard'

/** A clip's row with what the clip would say. */
export interface DrawnSounding {
  readonly row: SweepRow
  readonly evidence: ClipEvidence
}

/**
 * Evidence of a whole sweep, drawn without making the sound: the same parts, the same bubbles one by one, the same
 * ground, summed by band and short frame with the scatter of a finite clip. For tuning and coverage.
 */
export function drawnEvidence(yard: Yard): DrawnSounding[] {
  return yard.clips.map((plan) => ({ row: plan.row, evidence: drawnClip(yard, plan) }))
}

/** Evidence of one clip, drawn. */
export function drawnClip(yard: Yard, plan: ClipPlan): ClipEvidence {
  const random = Random.named(`${yard.seed}/${plan.row.file}`, 'drawn')
  const durationS = clipDurationS(plan)
  const parts = clipParts(yard, plan)
  const expected = framePowers(parts, durationS)
  const powers = scattered(expected, random)
  if (plan.recorder.ridesGain) rideGain(powers, expected, totalPower(yard.floorPsd))
  if (plan.spoil === 'silent' || plan.spoil === 'faint') for (const band of powers) band.fill(0)
  const highestHz = 0.45 * plan.recorder.sampleRateHz
  const rings = drawnRings(parts, expected, durationS, random)
  const vouched = rings.ringList
  return {
    durationS,
    sampleRateHz: plan.recorder.sampleRateHz,
    channels: 1,
    bands: expected.grids.flatMap((grid) =>
      powers
        .slice(grid.from, grid.to)
        .map((band, i) => bandEvidence(band, { grid, band: grid.from + i, durationS, highestHz, vouched })),
    ),
    ...rings,
    problems: plan.spoil === null ? [] : [SPOILT_BY[plan.spoil]],
  }
}

/** The gain follows the whole clip in the shortest frames; longer frames take the mean of what falls into them. */
function rideGain(powers: readonly Float64Array[], { grids, outside }: FramePowers, restingPower: number): void {
  const fine = grids[grids.length - 1]!
  const at = (grid: FrameGrid, band: Float64Array, frame: number) =>
    band[Math.min(band.length - 1, Math.round((frame * fine.hopS) / Math.max(grid.hopS, 1e-9)))]!
  const totals = new Float64Array(fine.count).fill(outside)
  for (const grid of grids)
    for (const band of powers.slice(grid.from, grid.to))
      for (let f = 0; f < fine.count; f++) totals[f]! += at(grid, band, f)
  const gain = ridingGain(totals, restingPower, fine.hopS)
  for (const grid of grids)
    for (const band of powers.slice(grid.from, grid.to))
      for (let f = 0; f < band.length; f++)
        band[f]! *=
          gain[Math.min(fine.count - 1, Math.round((f * grid.hopS + (grid.frameS - fine.frameS) / 2) / fine.hopS))]!
}

/** What judging the clip would say of a spoilt take; a faint one hardly moves the converter and reads as silent. */
const SPOILT_BY: Readonly<Record<Spoil, Problem>> = {
  clipped: { key: 'clipped', severity: 'spoilt', values: { share_percent: 32 } },
  short: { key: 'too_short', severity: 'spoilt', values: { duration_s: 0.4 } },
  silent: { key: 'silent', severity: 'spoilt', values: { share_percent: 100 } },
  handled: { key: 'knocked', severity: 'spoilt', values: { count: 12, share_percent: 90 } },
  faint: { key: 'silent', severity: 'spoilt', values: { share_percent: 100 } },
}

interface BandInClip {
  readonly grid: FrameGrid
  readonly band: number
  readonly durationS: number
  /** Bands that reach above say nothing, Hz. */
  readonly highestHz: number
  readonly vouched: readonly Vouched[]
}

function bandEvidence(powers: Float64Array, at: BandInClip): BandEvidence {
  const { grid, durationS } = at
  const { midHz } = EVIDENCE_BANDS[at.band]!
  if (midHz * 10 ** 0.05 > at.highestHz || !powers.some((power) => power > 0))
    return { midHz, levelDbFs: null, quietDbFs: null, busyDbFs: null, steadyDbFs: null }
  const degrees = grid.degreesOfFreedom[at.band - grid.from]!
  const kept = vouchedFrames(midHz, grid, at.vouched)
  const levels = frameLevels(powers, degrees, { frameS: grid.frameS, durationS }, kept)
  const told = grid.tellsQuiet ? levels : null
  return {
    midHz,
    levelDbFs: powerToDb(mean(powers)),
    quietDbFs: told && powerToDb(told.quietPower),
    busyDbFs: told && powerToDb(told.busyPower),
    steadyDbFs: levels && powerToDb(levels.steadyPower),
  }
}
