/**
 * Power of one frequency in a stretch of samples, by Goertzel's recursion.
 *
 *     |Σ x[n]·e^(−2πi·f·n)|²
 *
 * @param samples Windowed already when that is wanted.
 * @param cyclesPerSample f, 0 to 0.5; need not fall on a bin.
 * @returns ≥ 0, in squared units of the samples times their number squared: a sine of amplitude A in N samples that falls
 *   on a bin gives (A·N/2)².
 * @see Goertzel 1958. [Goertzel1958]
 */
export function goertzel(samples: Float64Array, cyclesPerSample: number): number {
  const turn = 2 * Math.cos(2 * Math.PI * cyclesPerSample)
  let last = 0
  let before = 0
  for (let n = 0; n < samples.length; n++) {
    const next = samples[n]! + turn * last - before
    before = last
    last = next
  }
  return Math.max(0, last * last + before * before - turn * last * before)
}
