/** Id of the heading of the panel of a point. */
export const POINT_HEADING = 'point-heading'

/** Brings the panel of the chosen point into view, and the focus to its heading. */
export function showPointPanel(): void {
  const heading = document.getElementById(POINT_HEADING)
  heading?.focus({ preventScroll: true })
  heading?.closest('section')?.scrollIntoView({ block: 'start' })
}
