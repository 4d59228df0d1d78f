import { InputError } from '../base/errors'
import type { SketchPlace } from './line'

/** A place told by two tapes, or how far the tapes are from meeting. */
export type Trilaterated =
  /** On the left and on the right of the way from the first to the second; the same place where the tapes just meet. */
  | { readonly kind: 'places'; readonly left: SketchPlace; readonly right: SketchPlace }
  /** The tapes end this far from each other, m; negative: one ends inside the other. */
  | { readonly kind: 'no place'; readonly gapM: number }

/**
 * Where two tapes laid from two places meet.
 *
 * @param distanceFirstM, distanceSecondM ≥ 0.
 * @param slackM Tapes that miss each other by no more than this just meet. As much as two people read a tape wrong by.
 * @throws {InputError} a negative distance, or both places are the same.
 * @example trilaterate({ xM: 0, yM: 0 }, { xM: 5, yM: 0 }, 3, 4) // left (1.8, 2.4), right (1.8, -2.4)
 */
export function trilaterate(
  first: SketchPlace,
  second: SketchPlace,
  distanceFirstM: number,
  distanceSecondM: number,
  slackM = 0.05,
): Trilaterated {
  if (!(distanceFirstM >= 0 && distanceSecondM >= 0)) {
    throw new InputError(`distances are ${distanceFirstM} and ${distanceSecondM}; both must be >= 0`)
  }
  const [dx, dy] = [second.xM - first.xM, second.yM - first.yM]
  const baseM = Math.hypot(dx, dy)
  if (!(baseM > 0)) throw new InputError('both places are the same; tapes from one place leave a circle')
  const apartM = baseM - distanceFirstM - distanceSecondM
  const insideM = Math.abs(distanceFirstM - distanceSecondM) - baseM
  if (apartM > slackM) return { kind: 'no place', gapM: apartM }
  if (insideM > slackM) return { kind: 'no place', gapM: -insideM }
  const alongM = (baseM * baseM + distanceFirstM ** 2 - distanceSecondM ** 2) / (2 * baseM)
  const besideM = Math.sqrt(Math.max(0, distanceFirstM ** 2 - alongM ** 2))
  const [ux, uy] = [dx / baseM, dy / baseM]
  const at = (side: number): SketchPlace => ({
    xM: first.xM + alongM * ux - side * besideM * uy,
    yM: first.yM + alongM * uy + side * besideM * ux,
  })
  return { kind: 'places', left: at(1), right: at(-1) }
}
