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
import { differentIds, idField, onlyKeys, textField, wordField } from './fields'
import {
  FOUND_CAUSES,
  FOUND_WAYS,
  type Found,
  type KeptPhoto,
  MOST_FOUND,
  MOST_FOUND_NOTE,
  type ShownWindow,
} from './found'

const ALONG = { low: -10_000, high: 10_000 }
const TIME = { low: -1e12, high: 1e12 }
const BYTES = { low: 0, high: 1e12 }
const SHARE = { low: 0, high: 1 }
const VERDICTS = ['located', 'unsure', 'no leak heard'] as const

/**
 * What was found along a line, under `found`.
 *
 * @returns Empty when the key is missing.
 * @throws {FormatError} anything that is not as FORMAT.md of this folder says; an id twice.
 */
export function readFound(line: JsonObject): Found[] {
  const place = placeOf(line, 'found')
  const found = optionalList(line, 'found', MOST_FOUND).map((entry, i) =>
    readOne(jsonObject(entry, line.file, `${place}[${i}]`)),
  )
  differentIds(line, 'found', found)
  return found
}

function readOne(object: JsonObject): Found {
  onlyKeys(object, ['id', 'time_s', 'way', 'along_m', 'cause', 'note', 'photo', 'shown'])
  return {
    id: idField(object),
    timeS: requiredNumber(object, 'time_s', TIME),
    way: wordField(object, 'way', FOUND_WAYS),
    alongM: optionalNumber(object, 'along_m', ALONG),
    cause: wordField(object, 'cause', FOUND_CAUSES),
    note: textField(object, 'note', MOST_FOUND_NOTE),
    photo: readPhoto(object),
    shown: readShown(object),
  }
}

function readPhoto(found: JsonObject): KeptPhoto | null {
  const told = field(found, 'photo')
  if (told === undefined) return null
  const object = jsonObject(told, found.file, placeOf(found, 'photo'))
  onlyKeys(object, ['sha256', 'bytes'])
  const sha256 = textField(object, 'sha256', 64)
  if (/^[0-9a-f]{64}$/.test(sha256)) return { sha256, bytes: requiredNumber(object, 'bytes', BYTES) }
  const mend = `is ${shown(sha256)}; 64 hexadecimal digits are expected`
  throw new FormatError(object.file, placeOf(object, 'sha256'), mend)
}

function readShown(found: JsonObject): ShownWindow | null {
  const told = field(found, 'shown')
  if (told === undefined) return null
  const object = jsonObject(told, found.file, placeOf(found, 'shown'))
  onlyKeys(object, ['window_m', 'probability', 'along_m', 'verdict', 'version'])
  return {
    windowM: readWindow(object),
    probability: requiredNumber(object, 'probability', SHARE),
    alongM: requiredNumber(object, 'along_m', ALONG),
    verdict: wordField(object, 'verdict', VERDICTS),
    version: textField(object, 'version', 100),
  }
}

function readWindow(object: JsonObject): readonly [number, number] {
  const told = field(object, 'window_m')
  const place = placeOf(object, 'window_m')
  if (!Array.isArray(told) || told.length !== 2) {
    const is = told === undefined ? 'missing' : shown(told)
    throw new FormatError(object.file, place, `is ${is}; two numbers [from, to] are expected`)
  }
  const [fromM, toM] = told.map((end, i) => checkedNumber(end, object.file, `${place}[${i}]`, ALONG))
  if (fromM! > toM!) throw new FormatError(object.file, place, `is ${shown(told)}; the nearer end comes first`)
  return [fromM!, toM!]
}
