import { GRID_COUNT, gridPlace } from './grid'

/**
 * Half the natural logarithm of a spectrum on the grid, at the bins of a transform: straight lines over the logarithm
 * of frequency, level beyond the grid's ends.
 *
 * @param power On the grid, ≥ 0. @param length Of the transform. @returns Bins 0 to length/2 − 1.
 */
export function logAmplitudes(power: Float64Array, length: number, sampleRateHz: number): Float64Array {
  const log = power.map((p) => Math.log(Math.max(p, 1e-300)) / 2)
  const places = binPlaces(length, sampleRateHz)
  return places.map((place) => {
    const g = Math.floor(place)
    const a = log[g]!
    return a + (log[Math.min(g + 1, GRID_COUNT - 1)]! - a) * (place - g)
  })
}

const known = new Map<string, Float64Array>()

/** Place of every bin on the grid, held within it. */
function binPlaces(length: number, sampleRateHz: number): Float64Array {
  const key = `${length}/${sampleRateHz}`
  let places = known.get(key)
  if (places === undefined) {
    places = Float64Array.from({ length: length / 2 }, (_, k) =>
      k === 0 ? 0 : Math.min(Math.max(gridPlace((k * sampleRateHz) / length), 0), GRID_COUNT - 1),
    )
    known.set(key, places)
  }
  return places
}
