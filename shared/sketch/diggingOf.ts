import { type DigDimension, digDimensions } from '../job/digDimensions'
import type { Digging } from '../job/digging'
import { markPlace } from '../job/markPlace'
import type { Line } from '../line/line'
import { linePath } from '../line/linePath'
import type { Source } from '../locate/answer'
import type { DrawnMark } from './digMarks'

/** Fixed marks at their places and, with two of them, the tapes to the hole. */
export interface DrawnDigging {
  readonly marks: readonly DrawnMark[]
  readonly dimensions: readonly DigDimension[]
}

/** @param source The place that is dug for; without it there are no tapes. */
export function diggingOf(line: Line, source: Source | undefined, { marks }: Digging): DrawnDigging {
  const path = linePath(line)
  const drawn = marks.map((mark) => ({ id: mark.id, name: mark.name, place: markPlace(path, mark).place }))
  const [first, second] = drawn
  if (source === undefined || first === undefined || second === undefined) return { marks: drawn, dimensions: [] }
  return { marks: drawn, dimensions: digDimensions(path, source, [first.place, second.place]) }
}
