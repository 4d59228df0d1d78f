import { InputError } from '../base/errors'

/**
 * Slope of a spectrum: the straight line of least squares through the levels of its bins against log2 of frequency.
 *
 * Every bin weighs alike, so the upper octaves, which hold more bins, weigh more.
 *
 * @param power One-sided power or power density, N/2 + 1 bins (DC … Nyquist), any linear unit, ≥ 0.
 * @param binWidthHz Distance of the bins, > 0.
 * @param range Lowest and highest frequency that count, Hz; all bins but DC unless said.
 * @returns dB an octave; `null` when a bin in the range is empty and so has no level.
 * @throws {InputError} bin width not above 0; fewer than two bins in the range; a bin that is negative or not finite.
 */
export function spectralSlope(
  power: Float64Array,
  binWidthHz: number,
  range: { readonly fromHz?: number; readonly toHz?: number } = {},
): number | null {
  const { fromHz = binWidthHz, toHz = (power.length - 1) * binWidthHz } = range
  const first = Math.max(1, Math.ceil(fromHz / binWidthHz - 1e-9))
  const last = Math.min(power.length - 1, Math.floor(toHz / binWidthHz + 1e-9))
  if (!(binWidthHz > 0 && last - first >= 1)) {
    throw new InputError(`${fromHz} to ${toHz} Hz holds fewer than 2 of ${power.length} bins of ${binWidthHz} Hz`)
  }
  let x = 0
  let y = 0
  let xx = 0
  let xy = 0
  for (let k = first; k <= last; k++) {
    const value = power[k]!
    if (!(value >= 0 && value < Number.POSITIVE_INFINITY)) {
      throw new InputError(`bin ${k} holds ${value}; must be finite and not negative`)
    }
    if (value === 0) return null
    const octave = Math.log2(k)
    const levelDb = 10 * Math.log10(value)
    x += octave
    y += levelDb
    xx += octave * octave
    xy += octave * levelDb
  }
  const n = last - first + 1
  return (n * xy - x * y) / (n * xx - x * x)
}
