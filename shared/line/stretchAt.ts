import type { Line, Stretch } from './line'

/**
 * The stretch that holds a distance along the line.
 *
 * @returns The last one told of those that hold it, both their ends included; `null` where none was told.
 */
export function stretchAt(line: Pick<Line, 'stretches'>, alongM: number): Stretch | null {
  return line.stretches.filter((stretch) => stretch.fromM <= alongM && alongM <= stretch.toM).at(-1) ?? null
}
