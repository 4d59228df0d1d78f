import { butterworth, filterInPlace } from '../biquad'
import type { ClipScan } from './clipScan'

/** Below this, a clip holds drift and pressure, not sound. */
const FROM_HZ = 10

/** Wind, thumps and rumble have most of their power below this, bubbles theirs above. */
const TO_HZ = 80

/** Mean square of the bass, 10 to 80 Hz, in each block of the scan. */
export function bassPower(scan: ClipScan): Float64Array {
  const bass = new Float64Array(scan.slow)
  const start = scan.slow[0] ?? 0
  for (let i = 0; i < bass.length; i++) bass[i]! -= start
  filterInPlace(bass, butterworth('highpass', FROM_HZ, scan.slowRateHz))
  filterInPlace(bass, butterworth('lowpass', TO_HZ, scan.slowRateHz))
  const perBlock = scan.blockSamples / scan.slowFactor
  const power = new Float64Array(scan.power.length)
  for (let block = 0, i = 0; block < power.length; block++) {
    let squares = 0
    for (const end = i + perBlock; i < end; i++) squares += bass[i]! * bass[i]!
    power[block] = squares / perBlock
  }
  return power
}
