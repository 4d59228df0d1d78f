import type { SketchPlace } from './line'

/**
 * The corners with one of them moved.
 *
 * With lengths kept, the leg before it swings round its own beginning and all that follows goes along without turning;
 * the start takes the whole line with it. Otherwise only this corner moves, and the legs at it become longer or shorter.
 *
 * @param index       Of the corner, from 0.
 * @param place       Where it is to be; with lengths kept, where to it is pulled.
 * @returns The same corners when nothing moves.
 */
export function movedCorner(
  corners: readonly SketchPlace[],
  index: number,
  place: SketchPlace,
  keepLengths: boolean,
): readonly SketchPlace[] {
  const old = corners[index]
  if (old === undefined || (old.xM === place.xM && old.yM === place.yM)) return corners
  if (!keepLengths) return corners.with(index, place)
  const to = index === 0 ? place : swung(corners[index - 1]!, old, place)
  const [dx, dy] = [to.xM - old.xM, to.yM - old.yM]
  return corners.map((corner, i) => (i < index ? corner : { xM: corner.xM + dx, yM: corner.yM + dy }))
}

/** As far from the pivot as before, toward where it is pulled. */
function swung(pivot: SketchPlace, old: SketchPlace, toward: SketchPlace): SketchPlace {
  const lengthM = Math.hypot(old.xM - pivot.xM, old.yM - pivot.yM)
  const pullM = Math.hypot(toward.xM - pivot.xM, toward.yM - pivot.yM)
  if (pullM === 0) return old
  return {
    xM: pivot.xM + ((toward.xM - pivot.xM) * lengthM) / pullM,
    yM: pivot.yM + ((toward.yM - pivot.yM) * lengthM) / pullM,
  }
}
