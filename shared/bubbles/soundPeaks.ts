import { floorRow, powerDb, type SoundMap } from './soundMap'

/** Rings are looked for between these pitches, Hz: what soil lets through and a bubble of 1 to 20 mm can ring at. */
const LOWEST_RING_HZ = 150
const HIGHEST_RING_HZ = 3000

/** A place on the map where a pitch has suddenly become loud: what may be a ring. */
export interface SoundPeak {
  readonly frame: number
  readonly bin: number
  readonly pitchHz: number
  /** Level over the floor of its pitch, dB. */
  readonly overFloorDb: number
  /** Rise over what the same pitch had just before (over the floor, where that was quieter), dB. */
  readonly riseDb: number
}

/**
 * Least level over the floor, dB. In even noise a bin stands 9 dB over its mean once in e^7.9 = 2 800 looks and a
 * second holds some 3 000 independent ones: a few chance peaks a second are left, for the later tests to refuse.
 */
const LEAST_OVER_FLOOR_DB = 9

/** Least rise over what the same pitch had one frame's length before, dB. Chosen. */
const LEAST_RISE_DB = 6

/** How far back "before" is: a frame's length, so that the two share no samples. */
export const BEFORE_FRAMES = 4

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
  const { binCount, power, binWidthHz, firstBin } = map
  const at = frame * binCount + bin
  const level = powerDb(power[at]!)
  const floor = floorAround(map, frame, bin)
  if (level - floor < LEAST_OVER_FLOOR_DB) return null
  const before = Math.max(0, frame - BEFORE_FRAMES) * binCount + bin
  const beforeDb = powerDb(Math.max(power[before - 1]!, power[before]!, power[before + 1]!))
  const riseDb = level - Math.max(beforeDb, floor - HOLE_DB)
  if (riseDb < LEAST_RISE_DB) return null
  const pitchHz = (firstBin + bin + topOffset(power, at)) * binWidthHz
  return { frame, bin, pitchHz, overFloorDb: level - floor, riseDb }
}

/** Mean floor of five bins, dB. */
function floorAround(map: SoundMap, frame: number, bin: number): number {
  let product = 1
  for (let k = floorRow(map, frame) + bin - 2, end = k + 5; k < end; k++) product *= map.floor[k]!
  return powerDb(product) / 5
}

/** Where between the bins the parabola through three levels has its top, −0.5 to 0.5. */
function topOffset(power: Float32Array, at: number): number {
  const left = powerDb(power[at - 1]!)
  const right = powerDb(power[at + 1]!)
  const bend = left - 2 * powerDb(power[at]!) + right
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (left - right)) / bend)) : 0
}
