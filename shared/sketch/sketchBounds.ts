import type { SketchPlace } from '../line/line'
import type { DrawCommand } from './drawList'

export interface SketchBounds {
  readonly lowXM: number
  readonly highXM: number
  readonly lowYM: number
  readonly highYM: number
}

/**
 * The smallest upright box that holds every place of a sketch, m.
 *
 * @returns `null` for an empty sketch.
 */
export function sketchBounds(commands: readonly DrawCommand[]): SketchBounds | null {
  if (commands.length === 0) return null
  let [lowXM, highXM, lowYM, highYM] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const { xM, yM } of commands.flatMap(placesOf)) {
    lowXM = Math.min(lowXM, xM)
    highXM = Math.max(highXM, xM)
    lowYM = Math.min(lowYM, yM)
    highYM = Math.max(highYM, yM)
  }
  return { lowXM, highXM, lowYM, highYM }
}

function placesOf(command: DrawCommand): readonly SketchPlace[] {
  return command.kind === 'polyline' || command.kind === 'polygon' ? command.places : [command.at]
}
