import { FormatError } from '../base/errors'
import {
  checkedNumber,
  field,
  type JsonObject,
  jsonObject,
  optionalList,
  optionalNumber,
  placeOf,
  requiredNumber,
} from '../base/jsonFields'
import { shown } from '../base/shown'
import { ADHESIVES, type CureTimes } from '../pressure/cureTimes'
import { differentIds, flagField, idField, objectList, onlyKeys, textField, wordField } from './fields'
import {
  type Joint,
  type Mend,
  type MendPart,
  type MendStep,
  MOST_PART_NAME,
  MOST_PARTS,
  MOST_STEP_TEXT,
  MOST_STEPS,
} from './mend'
import { MOST_TESTS } from './pressureTests'

const ALONG = { low: -10_000, high: 10_000 }
const TIME = { low: -1e12, high: 1e12 }
const MINUTES = { low: 0, high: 100_000 }
const TEMPERATURE = { low: -60, high: 100 }

/**
 * The repair of a line, under `mend`.
 *
 * @returns `null` when the key is missing.
 * @throws {FormatError} anything that is not as FORMAT.md of this folder says.
 */
export function readMend(line: JsonObject): Mend | null {
  const told = field(line, 'mend')
  if (told === undefined) return null
  const object = jsonObject(told, line.file, placeOf(line, 'mend'))
  onlyKeys(object, ['cut_at_m', 'parts', 'steps', 'joint', 'closed_s'])
  const parts = objectList(object, 'parts', MOST_PARTS).map(readPart)
  const steps = objectList(object, 'steps', MOST_STEPS).map(readStep)
  differentIds(object, 'parts', parts)
  differentIds(object, 'steps', steps)
  return {
    cutAtM: optionalNumber(object, 'cut_at_m', ALONG),
    parts,
    steps,
    joint: readJoint(jsonObject(field(object, 'joint'), object.file, placeOf(object, 'joint'))),
    closedS: optionalNumber(object, 'closed_s', TIME),
  }
}

function readPart(object: JsonObject): MendPart {
  onlyKeys(object, ['id', 'name', 'from_m', 'to_m', 'test_ids'])
  const testIds = optionalList(object, 'test_ids', MOST_TESTS).map((id, i) => {
    if (typeof id === 'string' && /^[\w-]{1,64}$/.test(id)) return id
    const place = `${placeOf(object, 'test_ids')}[${i}]`
    throw new FormatError(object.file, place, `is ${shown(id)}; letters, digits and hyphens are expected`)
  })
  return {
    id: idField(object),
    name: textField(object, 'name', MOST_PART_NAME),
    fromM: requiredNumber(object, 'from_m', ALONG),
    toM: requiredNumber(object, 'to_m', ALONG),
    testIds,
  }
}

function readStep(object: JsonObject): MendStep {
  onlyKeys(object, ['id', 'text', 'done'])
  return { id: idField(object), text: textField(object, 'text', MOST_STEP_TEXT), done: flagField(object, 'done') }
}

function readJoint(object: JsonObject): Joint {
  onlyKeys(object, ['adhesive', 'work_min', 'pressure_min', 'temperature_c', 'start_s'])
  return {
    adhesive: wordField(object, 'adhesive', ADHESIVES),
    times: readTimes(object),
    temperatureC: optionalNumber(object, 'temperature_c', TEMPERATURE),
    startS: optionalNumber(object, 'start_s', TIME),
  }
}

function readTimes(object: JsonObject): CureTimes | null {
  const pressureMin = readRange(object, 'pressure_min')
  return pressureMin === null ? null : { workMin: readRange(object, 'work_min'), pressureMin }
}

function readRange(object: JsonObject, key: string): readonly [number, number] | null {
  const told = field(object, key)
  if (told === undefined) return null
  const place = placeOf(object, key)
  if (!Array.isArray(told) || told.length !== 2) {
    throw new FormatError(object.file, place, `is ${shown(told)}; two numbers [from, to] are expected`)
  }
  const [from, to] = told.map((end, i) => checkedNumber(end, object.file, `${place}[${i}]`, MINUTES))
  if (from! > to!) throw new FormatError(object.file, place, `is ${shown(told)}; the shorter time comes first`)
  return [from!, to!]
}
