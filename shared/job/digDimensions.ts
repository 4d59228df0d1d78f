import type { SketchPlace } from '../line/line'
import type { LinePath } from '../line/linePath'
import { placeAlong } from '../line/placeAlong'
import { tapeErrorM } from '../line/tapeErrorM'

/** A place of the hole with its tapes from both marks. */
export interface DigDimension {
  readonly what: 'begin' | 'place' | 'end'
  readonly alongM: number
  readonly place: SketchPlace
  readonly firstM: number
  readonly secondM: number
  /** How far off it may be found again by these tapes, 95 %, m; Infinity where they lie in one line. */
  readonly errorM: number
}

/** Both ends of the window and the place itself by tape from two marks, along the line. */
export function digDimensions(
  path: LinePath,
  source: { readonly alongM: number; readonly windowM: readonly [number, number] },
  [first, second]: readonly [SketchPlace, SketchPlace],
): DigDimension[] {
  const [fromM, toM] = source.windowM
  const places = [
    ['begin', fromM],
    ['place', source.alongM],
    ['end', toM],
  ] as const
  return places.map(([what, alongM]) => {
    const place = placeAlong(path, alongM)
    const away = (mark: SketchPlace) => Math.hypot(mark.xM - place.xM, mark.yM - place.yM)
    return {
      what,
      alongM,
      place,
      firstM: away(first),
      secondM: away(second),
      errorM: tapeErrorM(first, second, place),
    }
  })
}
