import { HIGHEST_RING_HZ, LOWEST_RING_HZ, type SoundMap } from './soundMap'

/** A place on the map where a pitch has suddenly become loud: what may be a ring. */
export interface SoundPeak {
  readonly frame: number
  readonly bin: number
  readonly pitchHz: number
  /** Level over the floor of its pitch, dB. */
  readonly overFloorDb: number
}

/**
 * Least level over the floor, dB. In even noise a bin stands 9 dB over its mean once in e^7.9 = 2 800 looks and a
 * second holds some 3 000 independent ones: about one chance peak a second is left, for the later tests to refuse.
 */
const LEAST_OVER_FLOOR_DB = 9

/** Least rise over what the same pitch had one frame's length before, dB. Chosen. */
const LEAST_RISE_DB = 6

/** How far back "before" is: a frame's length, so that the two share no samples. */
export const BEFORE_FRAMES = 5

/** A level this far under the floor is no better than the floor to rise from: noise has holes, dB. Chosen. */
const HOLE_DB = 3

/**
 * Sudden peaks of the map: local maxima in time and in pitch that stand over the floor and rose quickly.
 *
 * @returns In order of time.
 */
export function soundPeaks(map: SoundMap): SoundPeak[] {
  const { frameCount, binCount, power, binWidthHz, firstBin } = map
  const peaks: SoundPeak[] = []
  const lowest = Math.max(2, Math.ceil(LOWEST_RING_HZ / binWidthHz) - firstBin)
  const highest = Math.min(binCount - 3, Math.floor(HIGHEST_RING_HZ / binWidthHz) - firstBin)
  for (let frame = 2; frame < frameCount - 2; frame++) {
    const row = frame * binCount
    for (let bin = lowest; bin <= highest; bin++) {
      const at = row + bin
      const here = power[at]!
      if (here <= power[at + 1]! || here < power[at - 1]! || here <= power[at + binCount]!) continue
      if (here < power[at - binCount]! || here <= power[at + 2]! || here < power[at - 2]!) continue
      if (here <= power[at + 2 * binCount]! || here < power[at - 2 * binCount]!) continue
      const peak = judged(map, frame, bin)
      if (peak !== null) peaks.push(peak)
    }
  }
  return peaks
}

function judged(map: SoundMap, frame: number, bin: number): SoundPeak | null {
  const { binCount, levelDb, floorDb, binWidthHz, firstBin } = map
  const at = frame * binCount + bin
  const level = levelDb[at]!
  const floor = (floorDb[at - 2]! + floorDb[at - 1]! + floorDb[at]! + floorDb[at + 1]! + floorDb[at + 2]!) / 5
  if (level - floor < LEAST_OVER_FLOOR_DB) return null
  const before = Math.max(0, frame - BEFORE_FRAMES) * binCount + bin
  const beforeDb = Math.max(levelDb[before - 1]!, levelDb[before]!, levelDb[before + 1]!, floor - HOLE_DB)
  if (level - beforeDb < LEAST_RISE_DB) return null
  const left = levelDb[at - 1]!
  const right = levelDb[at + 1]!
  const bend = left - 2 * level + right
  const shift = bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (left - right)) / bend)) : 0
  return { frame, bin, pitchHz: (firstBin + bin + shift) * binWidthHz, overFloorDb: level - floor }
}
