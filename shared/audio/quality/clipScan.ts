/** What one walk over a clip gathers for the judges of its quality. */
export interface ClipScan {
  /** Samples of a block, about 10 ms; what is left over at the end belongs to none. */
  readonly blockSamples: number
  readonly blocksPerS: number
  /** Mean of each block, full scale. */
  readonly mean: Float64Array
  /** Mean square around that mean: what sounds above about 60 Hz. */
  readonly power: Float64Array
  /** Mean square of the second difference: the treble, which rises by 12 dB an octave. */
  readonly roughness: Float64Array
  readonly highest: Float32Array
  readonly lowest: Float32Array
  /** The clip in means of `slowFactor` samples, about 3 kHz: enough for rumble, hum and the pitch of a voice. */
  readonly slow: Float32Array
  readonly slowFactor: number
  readonly slowRateHz: number
}

/** Means of a block. */
const SLOW_PER_BLOCK = 30

/** Rate of the means; treble that aliases is held down by the mean itself, enough for judging. */
const SLOW_RATE_HZ = 3_000

/**
 * Walks once over the samples.
 *
 * @param samples Full scale ±1 or any other; finite.
 * @param sampleRateHz 8 000 to 192 000.
 */
export function clipScan(samples: Float32Array, sampleRateHz: number): ClipScan {
  const slowFactor = Math.max(1, Math.round(sampleRateHz / SLOW_RATE_HZ))
  const blockSamples = SLOW_PER_BLOCK * slowFactor
  const count = Math.floor(samples.length / blockSamples)
  const scan: ClipScan = {
    blockSamples,
    blocksPerS: sampleRateHz / blockSamples,
    mean: new Float64Array(count),
    power: new Float64Array(count),
    roughness: new Float64Array(count),
    highest: new Float32Array(count),
    lowest: new Float32Array(count),
    slow: new Float32Array(count * SLOW_PER_BLOCK),
    slowFactor,
    slowRateHz: sampleRateHz / slowFactor,
  }
  for (let block = 0; block < count; block++) scanBlock(samples, block, scan)
  return scan
}

function scanBlock(samples: Float32Array, block: number, scan: ClipScan): void {
  const { blockSamples, slowFactor, slow } = scan
  let at = block * blockSamples
  let before = samples[Math.max(0, at - 1)]!
  let twoBefore = samples[Math.max(0, at - 2)]!
  let highest = samples[at]!
  let lowest = highest
  let sum = 0
  let squares = 0
  let bends = 0
  for (let s = 0; s < SLOW_PER_BLOCK; s++) {
    let part = 0
    for (const end = at + slowFactor; at < end; at++) {
      const x = samples[at]!
      const bend = x - 2 * before + twoBefore
      twoBefore = before
      before = x
      part += x
      squares += x * x
      bends += bend * bend
      if (x > highest) highest = x
      if (x < lowest) lowest = x
    }
    slow[block * SLOW_PER_BLOCK + s] = part / slowFactor
    sum += part
  }
  const mean = sum / blockSamples
  scan.mean[block] = mean
  scan.power[block] = Math.max(0, squares / blockSamples - mean * mean)
  scan.roughness[block] = bends / blockSamples
  scan.highest[block] = highest
  scan.lowest[block] = lowest
}
