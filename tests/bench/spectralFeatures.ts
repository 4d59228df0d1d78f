/**
 * The spectral features that Meyda has too, ours and through Meyda, over the same frames in one run:
 *
 *     npx tsx tests/bench/spectralFeatures.ts
 *
 * Bound: ours at least 5 times faster. Ends with status 1 if it is not.
 */
import Meyda from 'meyda'
import { Random } from '../../shared/base/random'
import { oneSidedPower, transformOfSize } from '../../shared/spectrum/powerSpectrum'
import { spectralFeatures } from '../../shared/spectrum/spectralFeatures'
import { windowPower, windowSamples } from '../../shared/spectrum/windows'

const RATE_HZ = 48_000
const CLIP_S = 10
const FRAME = 2048
const ROUNDS = 7
const BOUND = 5
/** What both have. Meyda's slope and flux are left out: its slope is wrong and its flux throws. */
const NAMES = [
  'spectralCentroid',
  'spectralSpread',
  'spectralSkewness',
  'spectralKurtosis',
  'spectralFlatness',
  'spectralRolloff',
  'spectralCrest',
] as const

/** Invented: soft noise and twelve decaying tones a second. */
function makeClip(seed: number): Float32Array {
  const random = new Random(seed)
  const clip = Float32Array.from({ length: CLIP_S * RATE_HZ }, () => random.normal(0, 0.01))
  for (let ring = 0; ring < 12 * CLIP_S; ring++) {
    const first = random.integer(0, clip.length - 1)
    const pitchHz = random.logUniform(300, 3000)
    const decayPerS = pitchHz / 12
    for (let n = first; n < Math.min(clip.length, first + 0.1 * RATE_HZ); n++) {
      const t = (n - first) / RATE_HZ
      clip[n]! += 0.1 * Math.exp(-decayPerS * t) * Math.sin(2 * Math.PI * pitchHz * t)
    }
  }
  return clip
}

const clip = makeClip(1)
const starts = Array.from({ length: Math.floor((clip.length - FRAME) / (FRAME / 2)) + 1 }, (_, i) => (i * FRAME) / 2)

function ours(): number {
  const window = windowSamples('hann', FRAME)
  const transform = transformOfSize(FRAME)
  const input = new Float64Array(FRAME)
  const output = new Float64Array(2 * FRAME)
  const power = new Float64Array(FRAME / 2 + 1)
  const scale = 1 / (FRAME * windowPower(window))
  let centroids = 0
  for (const start of starts) {
    for (let n = 0; n < FRAME; n++) input[n] = window[n]! * clip[start + n]!
    transform.real(output, input)
    oneSidedPower(power, output, scale)
    centroids += spectralFeatures(power, RATE_HZ / FRAME, { weighting: 'amplitude' })!.centroidHz
  }
  return centroids / starts.length
}

function theirs(): number {
  Object.assign(Meyda, { bufferSize: FRAME, sampleRate: RATE_HZ, windowingFunction: 'hanning' })
  let centroids = 0
  for (const start of starts) {
    const features = Meyda.extract([...NAMES], clip.subarray(start, start + FRAME))
    centroids += (features!.spectralCentroid! * RATE_HZ) / FRAME
  }
  return centroids / starts.length
}

function timeMs(work: () => number): number {
  const start = performance.now()
  work()
  return performance.now() - start
}

const median = (values: number[]) => values.toSorted((a, b) => a - b)[values.length >> 1]!
const centroids = { ours: ours(), meyda: theirs() }
const times = { ours: [] as number[], meyda: [] as number[] }
for (let round = 0; round < ROUNDS; round++) {
  times.ours.push(timeMs(ours))
  times.meyda.push(timeMs(theirs))
}
const ratio = median(times.meyda) / median(times.ours)
console.log(`${CLIP_S} s at ${RATE_HZ} Hz, ${starts.length} frames of ${FRAME}, medians of ${ROUNDS} rounds`)
console.log(`ours   ${median(times.ours).toFixed(1)} ms, mean centroid ${centroids.ours.toFixed(1)} Hz on amplitudes`)
console.log(`meyda  ${median(times.meyda).toFixed(1)} ms, mean centroid ${centroids.meyda.toFixed(1)} Hz`)
console.log(`ratio  ${ratio.toFixed(1)} (bound ${BOUND})`)
process.exitCode = ratio >= BOUND ? 0 : 1
