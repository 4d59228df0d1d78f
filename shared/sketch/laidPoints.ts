import { InputError } from '../base/errors'
import { MOST_PLANNED_POINTS, type PlannedPoint } from '../job/plannedPoints'

export interface LayPoints {
  /** The part of the line to be laid with points, from < to, m along. */
  readonly fromM: number
  readonly toM: number
  /** From point to point, > 0, m. */
  readonly spacingM: number
  /** Points that stay: nothing is laid where one of them is. */
  readonly staying: readonly { readonly point: number; readonly alongM: number; readonly offsetM: number }[]
}

/** The end gets a point of its own when the last one is further from it than this share of the spacing. */
const END_SHARE = 0.5
/** A point that stays stands for a new one that would be nearer than this share of the spacing. */
const STAYING_SHARE = 0.4

/**
 * Points at a spacing along part of a line, both its ends included.
 *
 * @returns The new ones, in order along the line, numbered on from the highest that stays, from 1 without any.
 * @throws {InputError} a part or a spacing of no length; more points than a line can have.
 */
export function laidPoints({ fromM, toM, spacingM, staying }: LayPoints): PlannedPoint[] {
  if (!(toM > fromM) || !(spacingM > 0)) throw new InputError('from < to and a spacing above 0 are needed')
  const gaps = Math.floor((toM - fromM) / spacingM + 1e-9)
  if (gaps > MOST_PLANNED_POINTS) throw new InputError(`more than ${MOST_PLANNED_POINTS} points; lay fewer`)
  const places = Array.from({ length: gaps + 1 }, (_, i) => fromM + i * spacingM)
  const restM = toM - places.at(-1)!
  if (restM > END_SHARE * spacingM) places.push(toM)
  else if (restM < 1e-6) places[gaps] = toM
  const isFree = (alongM: number) =>
    !staying.some((each) => each.offsetM === 0 && Math.abs(each.alongM - alongM) < STAYING_SHARE * spacingM)
  const last = staying.reduce((high, { point }) => Math.max(high, point), 0)
  return places.filter(isFree).map((alongM, i) => ({ point: last + 1 + i, alongM, offsetM: 0 }))
}
