import { InputError } from '../base/errors'

/**
 * Discrete Fourier transform in place, radix 2, double precision, unscaled both ways.
 *
 * The yard keeps a transform of its own so that what it renders shares no code with what judges it.
 *
 * @param real Length a power of two. @param imaginary Same length.
 * @param direction −1 forward (e^(−i…)), +1 back (not divided by the length).
 * @throws {InputError} lengths differ or are no power of two.
 */
export function fourier(real: Float64Array, imaginary: Float64Array, direction: -1 | 1): void {
  const n = real.length
  if (imaginary.length !== n || n < 2 || (n & (n - 1)) !== 0)
    throw new InputError(`lengths are ${n} and ${imaginary.length}; must be one power of two`)
  reorder(real, imaginary)
  const { cosine, sine } = twiddles(n)
  for (let half = 1; half < n; half *= 2) {
    const stride = n / (2 * half)
    for (let j = 0; j < half; j++) {
      const wr = cosine[j * stride]!
      const wi = direction * sine[j * stride]!
      for (let a = j; a < n; a += 2 * half) {
        const b = a + half
        const tr = wr * real[b]! - wi * imaginary[b]!
        const ti = wr * imaginary[b]! + wi * real[b]!
        real[b] = real[a]! - tr
        imaginary[b] = imaginary[a]! - ti
        real[a]! += tr
        imaginary[a]! += ti
      }
    }
  }
}

function reorder(real: Float64Array, imaginary: Float64Array): void {
  const n = real.length
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1
    for (; j & bit; bit >>= 1) j ^= bit
    j ^= bit
    if (i >= j) continue
    const r = real[i]!
    real[i] = real[j]!
    real[j] = r
    const m = imaginary[i]!
    imaginary[i] = imaginary[j]!
    imaginary[j] = m
  }
}

const known = new Map<number, { cosine: Float64Array; sine: Float64Array }>()

function twiddles(n: number): { cosine: Float64Array; sine: Float64Array } {
  let pair = known.get(n)
  if (pair === undefined) {
    pair = {
      cosine: Float64Array.from({ length: n / 2 }, (_, k) => Math.cos((2 * Math.PI * k) / n)),
      sine: Float64Array.from({ length: n / 2 }, (_, k) => Math.sin((2 * Math.PI * k) / n)),
    }
    known.set(n, pair)
  }
  return pair
}
