import { type FitModel, shapeLayout } from './fitModel'
import type { Parameters } from './parameters'

/**
 * Where a fit of one more source may start: as another fit stands, with the first source's spectrum of a second fit put in
 * after its own first source.
 *
 * @param first  Fit that is kept. @param second Fit whose first source is added; both with the same other sources.
 */
export function joinedFits(model: FitModel, first: Parameters, second: Parameters): Parameters {
  const at = shapeLayout(model).count
  const bands = model.bandKhz.length
  const shared = new Float64Array(first.shared.length + bands)
  shared.set(first.shared.subarray(0, at + bands))
  shared.set(second.shared.subarray(at, at + bands), at + bands)
  shared.set(first.shared.subarray(at + bands), at + 2 * bands)
  return { shared, own: first.own }
}
