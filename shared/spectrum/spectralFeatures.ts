import { InputError } from '../base/errors'

/** The shape of one spectrum in a few numbers. */
export interface SpectralFeatures {
  /** Centre of gravity, Hz. */
  readonly centroidHz: number
  /** Standard deviation about the centroid, Hz. */
  readonly spreadHz: number
  /** Third standardised moment; 0 for a symmetric spectrum. `null` when all the power is in one bin. */
  readonly skewness: number | null
  /** Fourth standardised moment; 3 for a Gaussian hump, 1.8 for a flat one. `null` when all the power is in one bin. */
  readonly kurtosis: number | null
  /** Geometric over arithmetic mean, 0 (a tone, or any empty bin) to 1 (flat). */
  readonly flatness: number
  /** Frequency below which `rolloffShare` of the sum lies, Hz. */
  readonly rolloffHz: number
  /** Strongest bin over the mean, dB, 0 (flat) or more. */
  readonly crestDb: number
}

/** What to weigh and where. */
export interface SpectralFeatureOptions {
  /** `power` (unless said): a strong tone outweighs a wide weak floor. `amplitude`: its root, as some tools have it. */
  readonly weighting?: 'power' | 'amplitude'
  /** Lowest and highest frequency that count, Hz; all bins but DC unless said (a constant is not sound). */
  readonly fromHz?: number
  readonly toHz?: number
  /** Share of the sum that lies below the roll-off, 0 to 1; 0.85 unless said. */
  readonly rolloffShare?: number
}

/**
 * Centroid, spread, skewness, kurtosis, flatness, roll-off and crest of one spectrum.
 *
 *     centroid = Σ f·a / Σ a,   spread² = Σ (f − centroid)²·a / Σ a,   flatness = exp(mean ln a) / mean a
 *
 * with a the power (or amplitude) of a bin and f its frequency.
 *
 * @param power One-sided power or power density, N/2 + 1 bins (DC … Nyquist), any linear unit, ≥ 0.
 * @param binWidthHz Distance of the bins, > 0.
 * @returns `null` for a spectrum without power between the two frequencies (a pause is data, not a mistake).
 * @throws {InputError} bin width not above 0; fewer than two bins between the frequencies; roll-off share outside 0 to
 *   1; a bin that is negative or not finite.
 * @see Peeters 2004. [Peeters2004] in shared/base/sources.ts
 */
export function spectralFeatures(
  power: Float64Array,
  binWidthHz: number,
  options: SpectralFeatureOptions = {},
): SpectralFeatures | null {
  const { weighting = 'power', rolloffShare = 0.85 } = options
  const { first, last } = binRange(power.length, binWidthHz, options)
  if (!(rolloffShare >= 0 && rolloffShare <= 1)) {
    throw new InputError(`rolloffShare is ${rolloffShare}; must be 0 to 1`)
  }
  const weights = weighting === 'power' ? power : roots(power)
  const { total, top, mean } = sums(weights, first, last)
  if (total === 0) return null
  const { variance, skewness, kurtosis } = moments(weights, first, last, mean, total)
  const average = total / (last - first + 1)
  return {
    centroidHz: mean * binWidthHz,
    spreadHz: Math.sqrt(variance) * binWidthHz,
    skewness,
    kurtosis,
    flatness: Math.exp(meanLog(weights, first, last)) / average,
    rolloffHz: rolloffBin(weights, first, last, rolloffShare * total) * binWidthHz,
    crestDb: (weighting === 'power' ? 10 : 20) * Math.log10(top / average),
  }
}

function binRange(binCount: number, binWidthHz: number, options: SpectralFeatureOptions) {
  if (!(binWidthHz > 0)) throw new InputError(`binWidthHz is ${binWidthHz}; must be above 0`)
  const { fromHz = binWidthHz, toHz = (binCount - 1) * binWidthHz } = options
  // A bin that an edge falls on by rounding belongs in.
  const first = Math.max(0, Math.ceil(fromHz / binWidthHz - 1e-9))
  const last = Math.min(binCount - 1, Math.floor(toHz / binWidthHz + 1e-9))
  if (!(last - first >= 1)) {
    throw new InputError(`${fromHz} to ${toHz} Hz holds fewer than 2 of ${binCount} bins of ${binWidthHz} Hz`)
  }
  return { first, last }
}

function sums(weights: Float64Array, first: number, last: number) {
  let total = 0
  let moment = 0
  let top = 0
  for (let k = first; k <= last; k++) {
    const weight = weights[k]!
    if (!(weight >= 0 && weight < Number.POSITIVE_INFINITY)) {
      throw new InputError(`bin ${k} holds ${weight}; must be finite and not negative`)
    }
    total += weight
    moment += k * weight
    if (weight > top) top = weight
  }
  return { total, top, mean: moment / total }
}

function moments(weights: Float64Array, first: number, last: number, mean: number, total: number) {
  let second = 0
  let third = 0
  let fourth = 0
  for (let k = first; k <= last; k++) {
    const off = k - mean
    const square = off * off * weights[k]!
    second += square
    third += square * off
    fourth += square * off * off
  }
  const variance = second / total
  if (variance === 0) return { variance, skewness: null, kurtosis: null }
  return { variance, skewness: third / total / variance ** 1.5, kurtosis: fourth / total / variance ** 2 }
}

function rolloffBin(weights: Float64Array, first: number, last: number, wanted: number): number {
  let sum = 0
  for (let k = first; k < last; k++) {
    sum += weights[k]!
    if (sum >= wanted) return k
  }
  return last
}

/**
 * Mean of the logarithms, −Infinity with an empty bin. Factors are multiplied up until the product nears the end of what
 * a number holds, because a logarithm a bin would cost more than all the rest.
 */
function meanLog(weights: Float64Array, first: number, last: number): number {
  let sum = 0
  let product = 1
  for (let k = first; k <= last; k++) {
    const weight = weights[k]!
    if (weight < 1e-100 || weight > 1e100) {
      sum += Math.log(weight)
      continue
    }
    product *= weight
    if (product < 1e-200 || product > 1e200) {
      sum += Math.log(product)
      product = 1
    }
  }
  return (sum + Math.log(product)) / (last - first + 1)
}

function roots(power: Float64Array): Float64Array {
  const amplitude = new Float64Array(power.length)
  for (let k = 0; k < power.length; k++) amplitude[k] = Math.sqrt(power[k]!)
  return amplitude
}
