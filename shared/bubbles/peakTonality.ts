import { DB_MEAN_BIAS, type SoundMap } from './soundMap'
import { BEFORE_FRAMES, type SoundPeak } from './soundPeaks'

/** How alone a peak stands on the map: one tone, or one of the many pitches of a knock. */
export interface PeakTonality {
  /** Share of the new energy within an octave either side that lies near the peak, 0 to 1. */
  readonly tonality: number
  /** Share of all new energy on the map that lies near the peak, 0 to 1. */
  readonly broadShare: number
  /**
   * The same in decibels over the floor rather than in energy, 0 to 1: every pitch counts alike, however the sound's
   * spectrum slopes, so that a knock dulled by soil still shows its width.
   */
  readonly liftShare: number
}

/** "Near" is this share of the pitch to either side, and at least this many bins: a ring damped as Q = 8. Chosen. */
const NEAR_SHARE = 1 / 8
const NEAR_BINS = 2

/** A bin is lifted when it stands this far over its floor; lifts beyond the second figure count no more, dB. Chosen. */
const LEAST_LIFT_DB = 4
const MOST_LIFT_DB = 30

/** @see PeakTonality */
export function peakTonality(map: SoundMap, peak: SoundPeak): PeakTonality {
  const { binCount, firstBin, power, levelDb, floorDb } = map
  const row = peak.frame * binCount
  const before = Math.max(0, peak.frame - BEFORE_FRAMES) * binCount
  const nearBins = nearBinsOf(map, peak)
  const octaveFrom = (firstBin + peak.bin) / 2 - firstBin
  const octaveTo = 2 * (firstBin + peak.bin) - firstBin
  let near = 0
  let octave = 0
  let all = 0
  let nearLift = 0
  let allLift = 0
  for (let k = 0; k < binCount; k++) {
    const liftDb = levelDb[row + k]! - Math.max(floorDb[row + k]!, levelDb[before + k]!)
    if (liftDb <= 0) continue
    const isNear = Math.abs(k - peak.bin) <= nearBins
    const fresh = power[row + k]! * (1 - 10 ** (-0.1 * liftDb))
    const lift = liftDb < LEAST_LIFT_DB ? 0 : Math.min(liftDb, MOST_LIFT_DB)
    all += fresh
    allLift += lift
    if (k > octaveFrom && k < octaveTo) octave += fresh
    if (isNear) {
      near += fresh
      nearLift += lift
    }
  }
  return {
    tonality: octave > 0 ? near / octave : 0,
    broadShare: all > 0 ? near / all : 0,
    liftShare: allLift > 0 ? nearLift / allLift : 0,
  }
}

/**
 * Level of a peak over its neighbours in pitch at the same moment, dB: what even noise at this moment would have to
 * exceed by chance. A gust, a step or a hiss lifts the neighbours as well; a ring does not.
 */
export function overNeighboursDb(map: SoundMap, peak: SoundPeak): number {
  const { binCount, firstBin, levelDb } = map
  const gap = Math.max(3, nearBinsOf(map, peak))
  const frames = { from: peak.frame - 1, to: peak.frame + 2 }
  const low = cellSum(map, frames, Math.round((firstBin + peak.bin) / 2) - firstBin, peak.bin - gap)
  const high = cellSum(map, frames, peak.bin + gap + 1, 2 * (firstBin + peak.bin) - firstBin)
  const cells = low.cells + high.cells
  if (cells === 0) return 0
  return levelDb[peak.frame * binCount + peak.bin]! - (low.sum + high.sum) / cells - DB_MEAN_BIAS
}

function nearBinsOf(map: SoundMap, peak: SoundPeak): number {
  return Math.max(NEAR_BINS, Math.round((peak.pitchHz * NEAR_SHARE) / map.binWidthHz))
}

function cellSum(map: SoundMap, frames: { from: number; to: number }, binFrom: number, binTo: number) {
  const { frameCount, binCount, levelSums } = map
  const width = binCount + 1
  const top = Math.max(0, frames.from) * width
  const bottom = Math.min(frameCount, frames.to) * width
  const left = Math.max(0, binFrom)
  const right = Math.min(binCount, binTo)
  if (right <= left) return { sum: 0, cells: 0 }
  const sum = levelSums[bottom + right]! - levelSums[top + right]! - levelSums[bottom + left]! + levelSums[top + left]!
  return { sum, cells: ((bottom - top) / width) * (right - left) }
}
