import { FormatError } from '../base/errors'
import {
  checkedNumber,
  field,
  type JsonObject,
  jsonObject,
  optionalNumber,
  placeOf,
  requiredNumber,
} from '../base/jsonFields'
import { shown } from '../base/shown'
import { flagField, idField, objectList, onlyKeys, textField, wordField } from './fields'
import {
  MOST_COMMENTS,
  MOST_OPINION_TEXT,
  MOST_OPINIONS,
  MOST_REVIEWER,
  OPINION_SAYS,
  type Opinion,
  type OpinionSeen,
} from './opinions'

const ALONG = { low: -10_000, high: 10_000 }
const TIME = { low: -1e12, high: 1e12 }
const WHOLE = { low: -1_000_000, high: 1_000_000 }
const SHARE = { low: 0, high: 1 }
const CLIP_TIME = { low: 0, high: 100_000 }

/** The opinions of a job or of a file of opinions; none when the key is not there. @throws {FormatError} */
export function readOpinions(object: JsonObject): Opinion[] {
  if (field(object, 'opinions') === undefined) return []
  return objectList(object, 'opinions', MOST_OPINIONS).map(readOpinion)
}

const KEYS = [
  'id',
  'job_id',
  'line_id',
  'time_s',
  'reviewer',
  'says',
  'along_m',
  'window_m',
  'confidence',
  'again',
].concat(['note', 'comments', 'seen', 'version', 'device_key', 'signature'])

function readOpinion(object: JsonObject): Opinion {
  onlyKeys(object, KEYS)
  const opinion: Opinion = {
    id: idField(object),
    jobId: textField(object, 'job_id', 64),
    lineId: textField(object, 'line_id', 64),
    timeS: requiredNumber(object, 'time_s', TIME),
    reviewer: textField(object, 'reviewer', MOST_REVIEWER),
    says: wordField(object, 'says', OPINION_SAYS),
    alongM: optionalNumber(object, 'along_m', ALONG),
    windowM: readWindow(object),
    confidence: optionalNumber(object, 'confidence', SHARE),
    again: objectList(object, 'again', MOST_COMMENTS).map((entry) => {
      onlyKeys(entry, ['point', 'note'])
      return { point: requiredNumber(entry, 'point', WHOLE), note: textField(entry, 'note', MOST_OPINION_TEXT) }
    }),
    note: textField(object, 'note', MOST_OPINION_TEXT),
    comments: objectList(object, 'comments', MOST_COMMENTS).map((entry) => {
      onlyKeys(entry, ['clip', 'at_s', 'text'])
      const clip = digestField(entry, 'clip')
      return { clip, atS: optionalNumber(entry, 'at_s', CLIP_TIME), text: textField(entry, 'text', MOST_OPINION_TEXT) }
    }),
    seen: readSeen(jsonObject(field(object, 'seen'), object.file, placeOf(object, 'seen'))),
    version: textField(object, 'version', 100),
    deviceKey: codeField(object, 'device_key', 87),
    signature: codeField(object, 'signature', 86),
  }
  const hasPlace = opinion.alongM !== null && opinion.windowM !== null && opinion.confidence !== null
  const hasNone = opinion.alongM === null && opinion.windowM === null && opinion.confidence === null
  if (opinion.says === 'here' ? hasPlace : hasNone) return opinion
  const mend = 'a place, a window and a confidence are expected with "here", and none of them otherwise'
  throw new FormatError(object.file, placeOf(object, 'says'), `is ${shown(opinion.says)}; ${mend}`)
}

function readWindow(object: JsonObject): readonly [number, number] | null {
  const told = field(object, 'window_m')
  if (told === undefined) return null
  const place = placeOf(object, 'window_m')
  const ends = Array.isArray(told) && told.length === 2 ? told : [Number.NaN, Number.NaN]
  const [fromM, toM] = ends.map((end, i) => checkedNumber(end, object.file, `${place}[${i}]`, ALONG))
  if (fromM! < toM!) return [fromM!, toM!]
  throw new FormatError(object.file, place, `runs from ${fromM} to ${toM}; the first is expected to be the smaller`)
}

function readSeen(object: JsonObject): OpinionSeen {
  onlyKeys(object, ['answer', 'opinions', 'shuffled', 'heard'])
  const heard = field(object, 'heard')
  const place = placeOf(object, 'heard')
  const isDigests = Array.isArray(heard) && heard.length <= 10_000 && heard.every(isDigest)
  if (!isDigests) throw new FormatError(object.file, place, `is ${shown(heard)}; a list of digests is expected`)
  return {
    answer: flagField(object, 'answer'),
    opinions: flagField(object, 'opinions'),
    shuffled: flagField(object, 'shuffled'),
    heard: heard as string[],
  }
}

function isDigest(value: unknown): value is string {
  return typeof value === 'string' && /^[0-9a-f]{64}$/.test(value)
}

function digestField(object: JsonObject, key: string): string {
  const value = field(object, key)
  if (isDigest(value)) return value
  throw new FormatError(object.file, placeOf(object, key), `is ${shown(value)}; 64 hexadecimal digits are expected`)
}

/** Base64url of so many characters. */
function codeField(object: JsonObject, key: string, length: number): string | null {
  const value = field(object, key)
  if (value === undefined) return null
  if (typeof value === 'string' && value.length === length && /^[\w-]+$/.test(value)) return value
  throw new FormatError(
    object.file,
    placeOf(object, key),
    `is ${shown(value)}; ${length} letters and digits are expected`,
  )
}
