import type { SketchPlace } from '../line/line'
import type { LinePath } from '../line/linePath'
import { placeAlong } from '../line/placeAlong'
import { type Trilaterated, trilaterate } from '../line/trilaterate'
import type { DigMark } from './digging'

/** Where a mark is on the sketch, and how that is known. */
export interface MarkPlace {
  readonly place: SketchPlace
  /** `taped`: by two tapes from the line. `by hand`: as it was put. `tapes miss`: they do not meet, so it is as it was put. */
  readonly known: 'taped' | 'by hand' | 'tapes miss'
  /** By how far the tapes miss each other, m; `null` where they meet or there are none. */
  readonly gapM: number | null
}

/**
 * Where a mark is: worked out from its tapes where there are two, on that side of the line on which it was put.
 *
 * @param path Of the line as it is told now: the tapes hold, whatever happens to the sketch.
 */
export function markPlace(path: LinePath, { place, tapes }: DigMark): MarkPlace {
  const byHand: MarkPlace = { place, known: 'by hand', gapM: null }
  if (tapes === null) return byHand
  const found = sideOf(path, tapes)
  if (found === null) return { ...byHand, known: 'tapes miss', gapM: null }
  if (found.kind === 'no place') return { ...byHand, known: 'tapes miss', gapM: found.gapM }
  const away = (at: SketchPlace) => Math.hypot(at.xM - place.xM, at.yM - place.yM)
  const nearer = away(found.left) <= away(found.right) ? found.left : found.right
  return { place: nearer, known: 'taped', gapM: null }
}

/** Both places where a mark's tapes meet; `null` where both were taped from one place. */
export function sideOf(path: LinePath, [first, second]: NonNullable<DigMark['tapes']>): Trilaterated | null {
  const [from, other] = [placeAlong(path, first.alongM), placeAlong(path, second.alongM)]
  if (Math.hypot(from.xM - other.xM, from.yM - other.yM) < 1e-6) return null
  return trilaterate(from, other, first.distanceM, second.distanceM)
}
