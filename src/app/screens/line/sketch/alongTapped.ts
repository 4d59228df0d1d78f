import { alongPlace } from '../../../../../shared/line/alongPlace'
import type { Line, SketchPlace } from '../../../../../shared/line/line'
import { linePath } from '../../../../../shared/line/linePath'
import type { Grain } from './padMode'

/** Where on the line a finger means: at a corner or an end that is near, else at a round distance along. */
export function alongTapped(line: Line, place: SketchPlace, { stepM, reachM }: Grain): number {
  const path = linePath(line)
  const { alongM } = alongPlace(path, place)
  const corner = [...path.alongM].find((cornerM) => Math.abs(cornerM - alongM) <= reachM / 2)
  return corner ?? Number((Math.round(alongM / stepM) * stepM).toFixed(6))
}

/** Moved along by keys, to a round hundredth of what a tape shows. */
export function alongNudged(alongM: number, byM: number): number {
  return Number((alongM + byM).toFixed(6))
}
