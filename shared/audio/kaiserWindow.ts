/**
 * Kaiser's window, the nearest simple thing to the window with the most energy in its main lobe.
 *
 *     w(u) = I0(β·√(1 − u²)) / I0(β),   −1 ≤ u ≤ 1
 *
 * @param u Place in the window: 0 the middle, ±1 the ends.
 * @param beta Shape, ≥ 0; from `kaiserBeta`.
 * @returns 0 to 1; 0 outside ±1.
 * @see Kaiser 1974. [Kaiser1974] in shared/base/sources.ts
 */
export function kaiserWindow(u: number, beta: number): number {
  const inside = 1 - u * u
  return inside < 0 ? 0 : besselI0(beta * Math.sqrt(inside)) / besselI0(beta)
}

/** Shape that keeps a windowed-sinc filter's ripple this far down; Kaiser's fit for more than 50 dB. [Kaiser1974] */
export function kaiserBeta(attenuationDb: number): number {
  return 0.1102 * (attenuationDb - 8.7)
}

/**
 * Half length of the filter that turns from pass to stop within a transition band.
 *
 * @param transition Width of the transition band in cycles per sample.
 * @returns Taps on each side of the middle one; not rounded. [Kaiser1974]
 */
export function kaiserHalfLength(attenuationDb: number, transition: number): number {
  return (attenuationDb - 7.95) / (14.36 * transition) / 2
}

/** Modified Bessel function of the first kind, order 0, by its power series. */
function besselI0(x: number): number {
  const quarter = (x * x) / 4
  let term = 1
  let sum = 1
  for (let k = 1; term > sum * 1e-17; k++) {
    term *= quarter / (k * k)
    sum += term
  }
  return sum
}
