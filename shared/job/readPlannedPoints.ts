import { FormatError } from '../base/errors'
import { type JsonObject, jsonObject, optionalList, placeOf, requiredNumber } from '../base/jsonFields'
import { onlyKeys } from './fields'
import { MOST_PLANNED_POINTS, type PlannedPoint } from './plannedPoints'

const ALONG = { low: -10_000, high: 10_000 }
const POINT = { low: -1_000_000, high: 1_000_000 }

/**
 * The planned points of a line, under `planned_points`.
 *
 * @returns Empty when the key is missing.
 * @throws {FormatError} anything that is no list of points; a number twice.
 */
export function readPlannedPoints(line: JsonObject): PlannedPoint[] {
  const place = placeOf(line, 'planned_points')
  const points = optionalList(line, 'planned_points', MOST_PLANNED_POINTS).map((entry, i) =>
    readPoint(jsonObject(entry, line.file, `${place}[${i}]`)),
  )
  const seen = new Set<number>()
  for (const { point } of points) {
    if (seen.has(point)) throw new FormatError(line.file, place, `holds point ${point} twice; numbers must differ`)
    seen.add(point)
  }
  return points
}

function readPoint(object: JsonObject): PlannedPoint {
  onlyKeys(object, ['point', 'along_m', 'offset_m'])
  const point = requiredNumber(object, 'point', POINT)
  if (!Number.isInteger(point)) {
    throw new FormatError(object.file, placeOf(object, 'point'), `is ${point}; a whole number is expected`)
  }
  return {
    point,
    alongM: requiredNumber(object, 'along_m', ALONG),
    offsetM: requiredNumber(object, 'offset_m', ALONG),
  }
}
