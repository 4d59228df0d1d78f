import { InputError } from '../base/errors'
import type { Line, SketchPlace } from './line'
import { lineCorners } from './lineCorners'
import { linePath } from './linePath'

/** Nearer to a corner than this, a thing is the corner's. Chosen: nobody lays a tape better. */
const AT_CORNER_M = 0.01

/**
 * The line drawn through other corners, as long as it is drawn.
 *
 * What stood at a corner goes with it: fittings, noises, the air inlet, ends of stretches. All else was measured from the
 * start and stays at its distance along.
 *
 * @param corners  Two or more, no two neighbours in one place, the start first.
 * @param cornerOf For each corner of the line before, its number among `corners`, `null` for one that is gone; without
 *   it they keep their numbers.
 * @throws {InputError} fewer than two corners; two neighbours in one place.
 */
export function lineWithCorners(
  line: Line,
  corners: readonly SketchPlace[],
  cornerOf?: readonly (number | null)[],
): Line {
  const after = cornersAlong(corners)
  const old = lineCorners(line)
  const before = old.length === 0 ? [] : cornersAlong(old)
  const moved = (atM: number) => {
    const number = before.findIndex((alongM) => Math.abs(alongM - atM) <= AT_CORNER_M)
    if (number < 0) return atM
    const now = cornerOf === undefined ? number : cornerOf[number]
    const nowM = now === null || now === undefined ? undefined : after[now]
    return nowM === undefined || Math.abs(nowM - before[number]!) < 1e-9 ? atM : nowM
  }
  return {
    ...line,
    lengthM: after.at(-1)!,
    vertices: corners,
    airInletM: line.airInletM === null ? null : moved(line.airInletM),
    fittings: line.fittings.map((each) => withAt(each, moved(each.atM))),
    noises: line.noises.map((each) => withAt(each, moved(each.atM))),
    stretches: line.stretches.map((stretch) => {
      const [fromM, toM] = [moved(stretch.fromM), moved(stretch.toM)]
      const isSame = fromM === stretch.fromM && toM === stretch.toM
      return isSame || fromM >= toM ? stretch : { ...stretch, fromM, toM }
    }),
  }
}

function withAt<Thing extends { readonly atM: number }>(thing: Thing, atM: number): Thing {
  return thing.atM === atM ? thing : { ...thing, atM }
}

/** Distance along at each corner. */
function cornersAlong(corners: readonly SketchPlace[]): number[] {
  const isTwice = corners.some(({ xM, yM }, i) => i > 0 && xM === corners[i - 1]!.xM && yM === corners[i - 1]!.yM)
  if (corners.length < 2 || isTwice) {
    throw new InputError('a line needs two corners or more, and no two neighbours in one place')
  }
  return [...linePath({ vertices: corners }).alongM]
}
