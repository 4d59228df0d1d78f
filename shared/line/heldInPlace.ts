import { alongPlace } from './alongPlace'
import type { LinePath } from './linePath'
import { placeAlong } from './placeAlong'

/** Closer than this it stayed where it was, m. */
const SAME_M = 1e-6

/**
 * Something beside a line that stays on its own spot of ground while the line is drawn anew.
 *
 * @returns The same thing when its distances along and off the line still say where it is; else with new ones.
 */
export function heldInPlace<Thing extends { readonly alongM: number; readonly offsetM: number }>(
  thing: Thing,
  before: LinePath,
  after: LinePath,
): Thing {
  const place = placeAlong(before, thing.alongM, thing.offsetM)
  const now = placeAlong(after, thing.alongM, thing.offsetM)
  if (Math.hypot(now.xM - place.xM, now.yM - place.yM) < SAME_M) return thing
  return { ...thing, ...alongPlace(after, place) }
}
