/** Which clip a line of a spectrum stands for: the point's own, or that of the point before or after it. */
export type LineRole = 'on' | 'off' | 'before' | 'after'

/** Told apart without colour: solid, dashed, dotted, dash and dot. */
export const LINE_DASHES: Readonly<Record<LineRole, readonly number[]>> = {
  on: [],
  off: [9, 5],
  before: [2, 4],
  after: [10, 4, 2, 4],
}
