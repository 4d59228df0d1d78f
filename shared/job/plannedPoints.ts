/**
 * A point that was laid on the line, to be listened at: its number is on a peg or a chalk mark in the yard. Where clips
 * were taken at a number, their rows say where it was; a planned point of the same number is where it was to be.
 */
export interface PlannedPoint {
  /** Whole, differs within a line. */
  readonly point: number
  /** Along the line, m; may lie past an end. */
  readonly alongM: number
  /** Off the line, positive to the left looking from start to end, m. */
  readonly offsetM: number
}

/** More than anybody walks. */
export const MOST_PLANNED_POINTS = 10_000
