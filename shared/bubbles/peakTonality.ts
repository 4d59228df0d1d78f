import { DB_MEAN_BIAS, floorRow, powerDb, type SoundMap } from './soundMap'
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

/**
 * Nor does what lies this far under the peak, dB: however pure, a tone that sets in at once leaks some −20 to −30 dB over the
 * map, and a strong ring must not be taken for a knock by its own leakage.
 */
const LEAKAGE_DB = 30

/** New is what a frame holds beyond the floor and beyond what the same pitch had just before. @see PeakTonality */
export function peakTonality(map: SoundMap, peak: SoundPeak): PeakTonality {
  const { binCount, firstBin, power } = map
  const row = peak.frame * binCount
  const floors = map.floor
  const floor = floorRow(map, peak.frame)
  const before = Math.max(0, peak.frame - BEFORE_FRAMES) * binCount
  const nearBins = nearBinsOf(map, peak)
  const octaveFrom = (firstBin + peak.bin) / 2 - firstBin
  const octaveTo = 2 * (firstBin + peak.bin) - firstBin
  const leakage = power[row + peak.bin]! * 10 ** (-LEAKAGE_DB / 10)
  let near = 0
  let octave = 0
  let all = 0
  let nearLift = 0
  let allLift = 0
  for (let k = 0; k < binCount; k++) {
    const old = Math.max(floors[floor + k]!, power[before + k]!)
    const fresh = power[row + k]! - old
    if (fresh <= 0) continue
    const liftDb = Math.min(powerDb(power[row + k]! / old), powerDb(power[row + k]! / leakage))
    const lift = liftDb < LEAST_LIFT_DB ? 0 : Math.min(liftDb, MOST_LIFT_DB)
    all += fresh
    allLift += lift
    if (k > octaveFrom && k < octaveTo) octave += fresh
    if (Math.abs(k - peak.bin) <= nearBins) {
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
 * Level of a peak over the mean level of its neighbours, within an octave either side, at the same moment, dB: what even
 * noise would have to exceed by chance. A gust, a step or a hiss lifts the neighbours as well; a ring does not.
 */
export function overNeighboursDb(map: SoundMap, peak: SoundPeak): number {
  const { binCount, firstBin, power } = map
  const gap = Math.max(3, nearBinsOf(map, peak))
  const lowFrom = Math.max(0, Math.round((firstBin + peak.bin) / 2) - firstBin)
  const highTo = Math.min(binCount, 2 * (firstBin + peak.bin) - firstBin)
  let sumDb = 0
  for (let frame = peak.frame - 1; frame <= peak.frame + 1; frame++) {
    const row = frame * binCount
    sumDb +=
      levelSum(power, row + lowFrom, row + peak.bin - gap) + levelSum(power, row + peak.bin + gap + 1, row + highTo)
  }
  const cells = 3 * (Math.max(0, peak.bin - gap - lowFrom) + Math.max(0, highTo - peak.bin - gap - 1))
  if (cells === 0) return 0
  return powerDb(power[peak.frame * binCount + peak.bin]!) - sumDb / cells - DB_MEAN_BIAS
}

function nearBinsOf(map: SoundMap, peak: SoundPeak): number {
  return Math.max(NEAR_BINS, Math.round((peak.pitchHz * NEAR_SHARE) / map.binWidthHz))
}

/** Sum of levels in dB, by products of eight, since logarithms are dear. */
function levelSum(power: Float32Array, from: number, to: number): number {
  let sum = 0
  for (let at = from; at < to; ) {
    let product = 1
    for (const end = Math.min(to, at + 8); at < end; at++) product *= power[at]!
    sum += powerDb(product)
  }
  return sum
}
