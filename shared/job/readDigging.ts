import { FormatError } from '../base/errors'
import { field, type JsonObject, jsonObject, optionalNumber, placeOf, requiredNumber } from '../base/jsonFields'
import { type Digging, type DigMark, type MarkTape, MOST_MARK_NAME, MOST_MARKS } from './digging'
import { differentIds, idField, objectList, onlyKeys, pairField, textField } from './fields'

const ALONG = { low: -10_000, high: 10_000 }
const PLACE = { low: -100_000, high: 100_000 }
const LENGTH = { low: 0, high: 10_000 }
const COST = { low: 0, high: 1e9 }

/**
 * What is planned of opening the ground, under `digging`.
 *
 * @returns `null` when the key is missing.
 * @throws {FormatError} anything that is not as FORMAT.md of this folder says.
 */
export function readDigging(line: JsonObject): Digging | null {
  const told = field(line, 'digging')
  if (told === undefined) return null
  const object = jsonObject(told, line.file, placeOf(line, 'digging'))
  onlyKeys(object, ['marks', 'round_m', 'round_cost_per_m'])
  const marks = objectList(object, 'marks', MOST_MARKS).map(readMark)
  differentIds(object, 'marks', marks)
  return {
    marks,
    roundM: optionalNumber(object, 'round_m', LENGTH),
    roundCostPerM: optionalNumber(object, 'round_cost_per_m', COST),
  }
}

function readMark(object: JsonObject): DigMark {
  onlyKeys(object, ['id', 'name', 'at', 'tapes'])
  const at = pairField(object, 'at', PLACE)
  if (at === null) throw new FormatError(object.file, placeOf(object, 'at'), 'is missing; two numbers are expected')
  return {
    id: idField(object),
    name: textField(object, 'name', MOST_MARK_NAME),
    place: { xM: at[0], yM: at[1] },
    tapes: readTapes(object),
  }
}

function readTapes(object: JsonObject): DigMark['tapes'] {
  if (field(object, 'tapes') === undefined) return null
  const [first, second] = objectList(object, 'tapes', 2).map((tape): MarkTape => {
    onlyKeys(tape, ['along_m', 'distance_m'])
    return { alongM: requiredNumber(tape, 'along_m', ALONG), distanceM: requiredNumber(tape, 'distance_m', LENGTH) }
  })
  if (first !== undefined && second !== undefined) return [first, second]
  throw new FormatError(object.file, placeOf(object, 'tapes'), 'must hold two tapes')
}
