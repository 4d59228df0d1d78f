import type { Clip } from '../../../shared/audio/clip'
import { fourier } from '../../../shared/synth/fourier'
import { EVIDENCE_BANDS } from '../../../shared/synth/grid'

/** Mean power of a clip in each band of the evidence, by one transform of all of it: slow, plain, no window. */
export function bandPowers({ channels, sampleRateHz }: Clip): number[] {
  const samples = channels[0]!
  const n = 2 ** Math.ceil(Math.log2(samples.length))
  const re = new Float64Array(n)
  re.set(samples)
  const im = new Float64Array(n)
  fourier(re, im, -1)
  return EVIDENCE_BANDS.map(({ midHz }) => {
    const first = Math.ceil((midHz * 10 ** -0.05 * n) / sampleRateHz)
    const last = Math.ceil((midHz * 10 ** 0.05 * n) / sampleRateHz)
    let power = 0
    for (let k = first; k < last; k++) power += re[k]! ** 2 + im[k]! ** 2
    return (2 * power) / n / samples.length
  })
}
