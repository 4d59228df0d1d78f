import { type BoundMeasurements, boundMeasurements } from './boundMeasurements'
import { informationBound, type Measurement } from './informationBound'
import { whitened } from './whitened'
import type { Yard } from './yard'

/**
 * How exactly the place of a yard's leak can be told from its band levels at best, as a standard deviation, m.
 *
 * The laws of the yard are taken as known. Unknown are: spectra of the leak, the floor, the inlet and every machine; the
 * microphone's own noise; gain and tilt of every setting-down, how loud floor and air were then, and how far it truly
 * stood from its mark; the floor of every clip against that; the drift; and everything that `yardUnknowns` lists of soil,
 * covers, slab, pipe, fittings, depth, inlet and machines: each with the spread the yard was drawn with. Levels scatter as
 * noise does and as countable bubbles do, many bands together. Rings by the piece are not used. Nuisances are taken as
 * heard by nobody and the places of pipe fittings as known: where there are some, nobody reaches this.
 *
 * @param misfitDb Standard deviation of what an estimate's own law misses of the ground, independent in every clip and
 *   band, dB; 0: it knows the yard's law to the letter, which nobody in a real yard does.
 * @returns `null` where it cannot be computed: no leak or two, slugs, a riding gain, an exit beside the hole, moving
 *   air, a source that was not told of, more than a quarter of the clips disturbed, or too little heard.
 */
export function positionBound(yard: Yard, misfitDb = 0): number | null {
  const known = boundMeasurements(yard, misfitDb)
  return known && informationBound(independent(known), known.priorSd)
}

/** The levels of all clips as measurements that scatter each by itself, with variance 1. */
function independent({ clips }: BoundMeasurements): Measurement[] {
  return clips.flatMap(({ at, slopes, covariance }) =>
    whitened(covariance, slopes).map((slope) => ({ at, slope, variance: 1 })),
  )
}
