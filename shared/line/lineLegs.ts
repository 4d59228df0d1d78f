import { InputError } from '../base/errors'
import type { Line, SketchPlace } from './line'
import { linePath } from './linePath'

/** A straight piece of a line, as somebody with a tape tells it. */
export interface Leg {
  /** > 0, m. */
  readonly lengthM: number
  /** Turn at its beginning against the leg before, degrees, positive to the left, −180 to 180; 0 for the first leg. */
  readonly turnDeg: number
}

/** Nearer to a corner than this, a fitting is the corner's. Chosen: nobody lays a tape better. */
const AT_CORNER_M = 0.01

/**
 * The legs of a line.
 *
 * @returns One straight leg for a line without a path; none when its length was not told either.
 */
export function lineLegs(line: Pick<Line, 'vertices' | 'lengthM'>): Leg[] {
  if (line.vertices === null) return line.lengthM === null ? [] : [{ lengthM: line.lengthM, turnDeg: 0 }]
  const { xM, yM, alongM } = linePath(line)
  const headings = Array.from({ length: alongM.length - 1 }, (_, i) =>
    Math.atan2(yM[i + 1]! - yM[i]!, xM[i + 1]! - xM[i]!),
  )
  return headings.map((heading, i) => ({
    lengthM: alongM[i + 1]! - alongM[i]!,
    turnDeg: i === 0 ? 0 : withinHalfTurn(((heading - headings[i - 1]!) * 180) / Math.PI),
  }))
}

/**
 * The line with other legs, laid from the same start in the same first direction.
 *
 * Fittings at a corner and at the end go with it, and so does the end of a stretch that reached the line's end; all
 * else was measured from the start and stays there.
 *
 * @param legs One or more.
 * @throws {InputError} no leg; a length not above 0; a turn that is not finite.
 */
export function lineWithLegs(line: Line, legs: readonly Leg[]): Line {
  const wrong = legs.find(({ lengthM, turnDeg }) => !(lengthM > 0 && lengthM < Infinity) || !Number.isFinite(turnDeg))
  if (wrong) throw new InputError(`leg is ${JSON.stringify(wrong)}; length must be > 0 and turn finite`)
  if (legs.length === 0) throw new InputError('a line needs one leg or more')
  const before = cornersAlong(lineLegs(line))
  const after = cornersAlong(legs)
  const endM = after.at(-1)!
  const oldEndM = line.lengthM ?? before.at(-1) ?? null
  return {
    ...line,
    lengthM: endM,
    vertices: legs.length === 1 && line.vertices === null ? null : laid(line.vertices, legs),
    fittings: line.fittings.map((fitting) => {
      const atM = moved(fitting.atM, before, after)
      return atM === fitting.atM ? fitting : { ...fitting, atM }
    }),
    stretches: line.stretches.map((stretch) =>
      oldEndM !== null && Math.abs(stretch.toM - oldEndM) <= AT_CORNER_M && stretch.fromM < endM
        ? { ...stretch, toM: endM }
        : stretch,
    ),
  }
}

/** Distances along of start, corners and end; the start alone without legs. */
function cornersAlong(legs: readonly Leg[]): number[] {
  const along = [0]
  for (const { lengthM } of legs) along.push(along.at(-1)! + lengthM)
  return along
}

/** The corner of the same number; the end goes with the end. */
function moved(atM: number, before: readonly number[], after: readonly number[]): number {
  const corner = before.findIndex((alongM) => Math.abs(alongM - atM) <= AT_CORNER_M)
  if (corner <= 0) return atM
  return corner === before.length - 1 ? after.at(-1)! : (after[corner] ?? atM)
}

function laid(vertices: readonly SketchPlace[] | null, legs: readonly Leg[]): SketchPlace[] {
  const path = linePath({ vertices })
  let heading = Math.atan2(path.yM[1]! - path.yM[0]!, path.xM[1]! - path.xM[0]!)
  let place: SketchPlace = { xM: path.xM[0]!, yM: path.yM[0]! }
  const places = [place]
  for (const [i, { lengthM, turnDeg }] of legs.entries()) {
    if (i > 0) heading += (turnDeg * Math.PI) / 180
    place = { xM: place.xM + lengthM * Math.cos(heading), yM: place.yM + lengthM * Math.sin(heading) }
    places.push(place)
  }
  return places
}

/** The same turn, above −180 and up to 180 degrees; a hair off a whole degree is rounding and taken off. */
function withinHalfTurn(deg: number): number {
  const turned = deg - 360 * Math.ceil((deg - 180) / 360)
  return (Math.abs(turned - Math.round(turned)) < 1e-9 ? Math.round(turned) : turned) + 0
}
