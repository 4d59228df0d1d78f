import { median } from '../base/statistics'
import { THIRD_OCTAVE_BANDS } from '../spectrum/thirdOctaveBands'
import type { BandEvidence, ClipEvidence } from './evidence'

/** Neighbouring bands that stand out together. */
export interface StandingOut {
  readonly lowHz: number
  readonly highHz: number
  /** The most that one of the bands stands over its floor, dB. */
  readonly overFloorDb: number
}

/** From here on a band tells something, dB. Chosen: four times the power. */
export const TELLING_OVER_FLOOR_DB = 6

/**
 * Where a point stands over the floor.
 *
 * The floor of a band is the point's own air-off level where it was taken, else the quiet fifth of what all points of
 * the sweep read with the air on. Levels are the steady ones, in which a single knock does not count.
 *
 * @param on, off The point's usable clips. @param all The usable air-on clips of all points, its own among them.
 * @returns Ranges of bands that touch, in rising order; none without an air-on clip.
 */
export function bandsOverFloor(
  on: readonly ClipEvidence[],
  off: readonly ClipEvidence[],
  all: readonly ClipEvidence[],
): StandingOut[] {
  const found: StandingOut[] = []
  for (const band of THIRD_OCTAVE_BANDS) {
    const overFloorDb = overDb(levels(on, band.midHz), levels(off, band.midHz), levels(all, band.midHz))
    if (overFloorDb === null || overFloorDb < TELLING_OVER_FLOOR_DB) continue
    const last = found.at(-1)
    const touches = last !== undefined && last.highHz > band.lowerHz / 1.01
    if (touches) found.pop()
    found.push({
      lowHz: touches ? last.lowHz : band.lowerHz,
      highHz: band.upperHz,
      overFloorDb: touches ? Math.max(last.overFloorDb, overFloorDb) : overFloorDb,
    })
  }
  return found
}

function overDb(on: readonly number[], off: readonly number[], all: readonly number[]): number | null {
  if (on.length === 0) return null
  if (off.length > 0) return median(on) - median(off)
  const sorted = [...all].sort((a, b) => a - b)
  return sorted.length === 0 ? null : median(on) - sorted[Math.floor(sorted.length / 5)]!
}

function levels(clips: readonly ClipEvidence[], midHz: number): number[] {
  return clips.flatMap(({ bands }) => {
    const band = bands.find((each) => Math.abs(each.midHz / midHz - 1) < 0.01)
    return (band && levelOf(band)) ?? []
  })
}

function levelOf(band: BandEvidence): number | null {
  return band.steadyDbFs ?? band.levelDbFs
}
