import { InputError } from '../base/errors'
import type { PowerDensity } from './welch'

/** A spectrum with few enough places to draw. */
export interface ThinSpectrum {
  /** Middles of the steps, Hz, rising. */
  readonly hz: Float64Array
  /** Mean power density of the step, dB against full scale squared per hertz. */
  readonly levelDbPerHz: Float64Array
}

/** What a step without power reads, so that a line always has a number to be drawn to. */
const FLOOR_DB_PER_HZ = -240

/**
 * A power density in steps of equal ratio, as a logarithmic axis shows it.
 *
 * Where a step holds several bins it is their mean power, so nothing between is skipped; where bins are wider than a
 * step, each bin stands for itself. The bin at 0 Hz is left out.
 *
 * @param options `lowHz` above 0 and below `highHz`; `perOctave` steps in an octave, above 0.
 * @returns Only frequencies that the density has; nothing when it has none.
 * @throws {InputError} limits or steps out of range.
 */
export function thinSpectrum(
  { density, binWidthHz }: PowerDensity,
  options: { readonly lowHz: number; readonly highHz: number; readonly perOctave: number },
): ThinSpectrum {
  const { lowHz, highHz, perOctave } = options
  if (!(lowHz > 0 && highHz > lowHz))
    throw new InputError(`limits are ${lowHz} to ${highHz} Hz; must rise from above 0`)
  if (!(perOctave > 0)) throw new InputError(`perOctave is ${perOctave}; must be above 0`)
  const first = Math.max(1, Math.ceil(lowHz / binWidthHz))
  const last = Math.min(density.length - 1, Math.floor(highHz / binWidthHz))
  const ratio = 2 ** (1 / perOctave)
  const hz: number[] = []
  const levels: number[] = []
  for (let k = first; k <= last; ) {
    const end = Math.min(last + 1, Math.max(k + 1, Math.ceil((k - 0.5) * ratio + 0.5)))
    let sum = 0
    for (let j = k; j < end; j++) sum += density[j]!
    hz.push(((k + end - 1) / 2) * binWidthHz)
    levels.push(Math.max(FLOOR_DB_PER_HZ, 10 * Math.log10(sum / (end - k))))
    k = end
  }
  return { hz: Float64Array.from(hz), levelDbPerHz: Float64Array.from(levels) }
}
