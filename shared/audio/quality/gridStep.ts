/** Stretches looked at, and samples of each: enough to meet two neighbours one step apart in anything that is faint. */
const STRETCHES = 8
const STRETCH_SAMPLES = 2048

/**
 * The step of the grid that the samples stand on: the smallest difference between neighbours that is not nought.
 *
 * It finds the converter's step whatever the file says: 16 bits padded to 24, or 16-bit capture handed over as floats.
 * For loud sound it may come out a few steps too wide, which does not matter where it is used.
 *
 * @returns Full scale; `null` when every sample looked at is the same.
 */
export function gridStep(samples: Float32Array): number | null {
  let least = Number.POSITIVE_INFINITY
  const reach = Math.max(0, samples.length - STRETCH_SAMPLES)
  for (let stretch = 0; stretch < STRETCHES; stretch++) {
    const from = Math.floor((reach * stretch) / (STRETCHES - 1))
    const to = Math.min(samples.length, from + STRETCH_SAMPLES)
    for (let i = from + 1; i < to; i++) {
      const difference = Math.abs(samples[i]! - samples[i - 1]!)
      if (difference > 0 && difference < least) least = difference
    }
  }
  return least === Number.POSITIVE_INFINITY ? null : least
}
