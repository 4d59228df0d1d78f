import type { Problem } from '../base/problem'
import { Random } from '../base/random'
import { chiSquaredOverDofQuantile } from '../base/statistics'
import type { BandEvidence, ClipEvidence } from '../evidence/evidence'
import type { SweepRow } from '../sweep/sweep'
import { drawnRings } from './drawnRings'
import { FRAME_S, framePowers, frameTotals, scattered } from './framePowers'
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
  const frames = Math.max(1, Math.floor(durationS / FRAME_S))
  const parts = clipParts(yard, plan)
  const expected = framePowers(parts, frames)
  const powers = scattered(expected, random)
  if (plan.recorder.ridesGain) rideGain(powers, frames, totalPower(yard.floorPsd))
  if (plan.spoil === 'silent' || plan.spoil === 'faint') powers.fill(0)
  return {
    durationS,
    sampleRateHz: plan.recorder.sampleRateHz,
    channels: 1,
    bands: EVIDENCE_BANDS.map((band, b) =>
      band.midHz * 1.122 > 0.45 * plan.recorder.sampleRateHz
        ? missing(band.midHz)
        : bandLevels(band, powers.subarray(b * frames, (b + 1) * frames)),
    ),
    ...drawnRings(parts, expected, durationS, random),
    problems: plan.spoil === null ? [] : [SPOILT_BY[plan.spoil]],
  }
}

function rideGain(powers: Float64Array, frames: number, restingPower: number): void {
  const gain = ridingGain(frameTotals(powers, frames), restingPower, FRAME_S)
  for (let i = 0; i < powers.length; i++) powers[i]! *= gain[i % frames]!
}

/** What judging the clip would say of a spoilt take; a faint one hardly moves the converter and reads as silent. */
const SPOILT_BY: Readonly<Record<Spoil, Problem>> = {
  clipped: { key: 'clipped', severity: 'spoilt', values: { share_percent: 32 } },
  short: { key: 'too_short', severity: 'spoilt', values: { duration_s: 0.4 } },
  silent: { key: 'silent', severity: 'spoilt', values: { share_percent: 100 } },
  handled: { key: 'knocked', severity: 'spoilt', values: { count: 12, share_percent: 90 } },
  faint: { key: 'silent', severity: 'spoilt', values: { share_percent: 100 } },
}

function missing(midHz: number): BandEvidence {
  return { midHz, levelDbFs: null, quietDbFs: null, busyDbFs: null, steadyDbFs: null }
}

const QUIET = 0.2
const BUSY = 0.9
/** Share of the loudest frames left out of the steady level. */
const LEFT_OUT = 0.1

function bandLevels({ midHz, widthHz }: { midHz: number; widthHz: number }, powers: Float64Array): BandEvidence {
  const sorted = Float64Array.from(powers).sort()
  const degrees = Math.max(2, 2 * widthHz * FRAME_S)
  const at = (share: number) =>
    sorted[Math.round(share * (sorted.length - 1))]! / chiSquaredOverDofQuantile(share, degrees)
  const kept = Math.max(1, Math.round(sorted.length * (1 - LEFT_OUT)))
  return {
    midHz,
    levelDbFs: level(meanOf(sorted, sorted.length)),
    quietDbFs: level(at(QUIET)),
    busyDbFs: level(at(BUSY)),
    steadyDbFs: level(meanOf(sorted, kept) / trimmedMean(degrees)),
  }
}

function meanOf(sorted: Float64Array, count: number): number {
  let sum = 0
  for (let i = 0; i < count; i++) sum += sorted[i]!
  return sum / count
}

const trimmedMeans = new Map<number, number>()

/** Mean of a chi-squared variable over its degrees of freedom when its largest tenth is left out. */
function trimmedMean(degrees: number): number {
  let known = trimmedMeans.get(degrees)
  if (known === undefined) {
    const steps = 200
    let sum = 0
    for (let s = 0; s < steps; s++) sum += chiSquaredOverDofQuantile(((s + 0.5) / steps) * (1 - LEFT_OUT), degrees)
    known = sum / steps
    trimmedMeans.set(degrees, known)
  }
  return known
}

function level(power: number): number | null {
  return power > 0 ? 10 * Math.log10(power) : null
}
