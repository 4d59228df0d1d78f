import type { Problem } from '../base/problem'
import { median } from '../base/statistics'
import { dbToPower, powerToDb } from '../base/units'
import type { ClipEvidence } from '../evidence/evidence'
import type { PointEvidence, Sounding } from './answer'
import { isUsable, weighedBands } from './settingsDown'

/** A point with what all its clips say together. */
export interface HeardPoint {
  readonly point: number
  readonly alongM: number
  readonly evidence: PointEvidence
  readonly problems: readonly Problem[]
}

/**
 * Gathers the clips of each point.
 *
 * The floor is the point's own air-off level where it was taken, else the quiet fifth of all points in that band.
 *
 * @returns In rising order of point number.
 */
export function pointEvidence(soundings: readonly Sounding[]): HeardPoint[] {
  const floors = sweepFloors(soundings)
  const byPoint = new Map<number, Sounding[]>()
  for (const sounding of soundings) {
    byPoint.set(sounding.row.point, [...(byPoint.get(sounding.row.point) ?? []), sounding])
  }
  return [...byPoint.entries()]
    .sort(([a], [b]) => a - b)
    .map(([point, clips]) => ({
      point,
      alongM: median(clips.map((clip) => clip.row.alongM)),
      evidence: together(clips, floors),
      problems: clips.every((clip) => !isUsable(clip)) ? clips.flatMap(spoiltProblems) : [],
    }))
}

function spoiltProblems(sounding: Sounding): Problem[] {
  return [...sounding.problems, ...(sounding.evidence?.problems ?? [])].filter(({ severity }) => severity === 'spoilt')
}

/** Quiet fifth of the air-on levels of each band over the sweep, dBFS. */
function sweepFloors(soundings: readonly Sounding[]): Map<number, number> {
  const levels = new Map<number, number[]>()
  for (const { evidence } of usableOf(soundings, 'on')) {
    for (const band of weighedBands(evidence)) {
      const level = band.steadyDbFs ?? band.levelDbFs
      if (level !== null) levels.set(band.midHz, [...(levels.get(band.midHz) ?? []), level])
    }
  }
  return new Map([...levels].map(([hz, all]) => [hz, [...all].sort((a, b) => a - b)[Math.floor(all.length / 5)]!]))
}

function usableOf(soundings: readonly Sounding[], air: 'on' | 'off'): { evidence: ClipEvidence }[] {
  return soundings.filter((s) => s.row.air === air && isUsable(s)).map((s) => ({ evidence: s.evidence! }))
}

function together(clips: readonly Sounding[], floors: ReadonlyMap<number, number>): PointEvidence {
  const on = usableOf(clips, 'on').map((clip) => clip.evidence)
  const off = usableOf(clips, 'off').map((clip) => clip.evidence)
  const middle = (value: (evidence: ClipEvidence) => number | null) => {
    const values = on.flatMap((evidence) => value(evidence) ?? [])
    return values.length === 0 ? null : median(values)
  }
  const best = mostOverFloor(on, off, floors)
  return {
    levelDbFs: middle((evidence) => bubbleBandLevelDb(evidence)),
    overFloorDb: best?.overDb ?? null,
    bestBandHz: best?.midHz ?? null,
    ringRatePerS: middle((evidence) => evidence.rings.ratePerS),
    medianPitchHz: middle((evidence) => evidence.rings.medianPitchHz),
    bubbling: middle((evidence) => evidence.bubbling),
    clipsUsed: on.length + off.length,
  }
}

/** Power of all bands that weigh together, dBFS. */
export function bubbleBandLevelDb(evidence: ClipEvidence): number | null {
  const power = weighedBands(evidence).reduce((sum, { steadyDbFs, levelDbFs }) => {
    const level = steadyDbFs ?? levelDbFs
    return level === null ? sum : sum + dbToPower(level)
  }, 0)
  return powerToDb(power)
}

function mostOverFloor(on: readonly ClipEvidence[], off: readonly ClipEvidence[], floors: ReadonlyMap<number, number>) {
  const levelOf = (clips: readonly ClipEvidence[], midHz: number) => {
    const levels = clips.flatMap((evidence) => {
      const band = evidence.bands.find((each) => each.midHz === midHz)
      const level = band?.steadyDbFs ?? band?.levelDbFs ?? null
      return level === null ? [] : [level]
    })
    return levels.length === 0 ? null : median(levels)
  }
  let best: { midHz: number; overDb: number } | null = null
  for (const [midHz, sweepFloor] of floors) {
    const level = levelOf(on, midHz)
    if (level === null) continue
    const overDb = level - (levelOf(off, midHz) ?? sweepFloor)
    if (best === null || overDb > best.overDb) best = { midHz, overDb }
  }
  return best
}
