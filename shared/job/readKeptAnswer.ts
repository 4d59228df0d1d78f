import { FormatError } from '../base/errors'
import {
  field,
  type JsonObject,
  jsonObject,
  optionalList,
  optionalNumber,
  placeOf,
  requiredNumber,
} from '../base/jsonFields'
import { readLineJson } from '../line/readLineJson'
import type { LocateAnswer, PointAnswer, Source } from '../locate/answer'
import {
  flagField,
  keyedList,
  numberList,
  objectList,
  onlyKeys,
  pairField,
  problemList,
  readKeyed,
  textField,
  wordField,
} from './fields'
import { type ClipDigest, type KeptAnswer, MOST_DENSITY, type PointSpectrum } from './keptAnswer'

const TIME = { low: -1e12, high: 1e12 }
const ALONG = { low: -20_000, high: 20_000 }
const NUMBER = { low: -1e9, high: 1e9 }
const SHARE = { low: 0, high: 1 }
const MOST = 10_000
const MOST_BANDS = 200
const VERDICTS = ['located', 'unsure', 'no leak heard'] as const

const KEYS = [
  'time_s',
  'version',
  'line',
  'verdict',
  'reasons',
  'sources',
  'points',
  'clips',
  'density',
  'listen_next',
  'dig_first',
  'spectra',
  'digests',
]

/**
 * The answer that was kept when the job was closed, under `kept_answer`.
 *
 * @returns `null` when the key is missing.
 * @throws {FormatError} anything that is not as FORMAT.md of this folder says.
 */
export function readKeptAnswer(jobLine: JsonObject): KeptAnswer | null {
  const told = field(jobLine, 'kept_answer')
  if (told === undefined) return null
  const object = jsonObject(told, jobLine.file, placeOf(jobLine, 'kept_answer'))
  onlyKeys(object, KEYS)
  return {
    timeS: requiredNumber(object, 'time_s', TIME),
    version: textField(object, 'version', 100),
    line: readLineJson(field(object, 'line'), `${object.file}, ${placeOf(object, 'line')}`).line,
    answer: readAnswer(object),
    spectra: objectList(object, 'spectra', MOST).map(readSpectrum),
    clips: objectList(object, 'digests', MOST).map(readDigest),
  }
}

function readAnswer(object: JsonObject): LocateAnswer {
  return {
    verdict: wordField(object, 'verdict', VERDICTS),
    reasons: keyedList(object, 'reasons', MOST),
    sources: objectList(object, 'sources', MOST).map(readSource),
    points: objectList(object, 'points', MOST).map(readPoint),
    clips: objectList(object, 'clips', MOST).map((clip) => {
      onlyKeys(clip, ['file', 'used', 'problems'])
      return { file: textField(clip, 'file', 1000), used: flagField(clip, 'used'), problems: problemList(clip) }
    }),
    density: readDensity(jsonObject(field(object, 'density'), object.file, placeOf(object, 'density'))),
    listenNext: objectList(object, 'listen_next', MOST).map((next) => {
      onlyKeys(next, ['along_m', 'offset_m', 'expected_window_m'])
      return {
        alongM: requiredNumber(next, 'along_m', ALONG),
        offsetM: requiredNumber(next, 'offset_m', ALONG),
        expectedWindowM: requiredNumber(next, 'expected_window_m', NUMBER),
      }
    }),
    digFirst: objectList(object, 'dig_first', MOST).map((piece) => {
      onlyKeys(piece, ['from_m', 'to_m', 'probability', 'cost'])
      return {
        fromM: requiredNumber(piece, 'from_m', ALONG),
        toM: requiredNumber(piece, 'to_m', ALONG),
        probability: requiredNumber(piece, 'probability', SHARE),
        cost: optionalNumber(piece, 'cost', { low: 0, high: 1e15 }),
      }
    }),
  }
}

function readSource(object: JsonObject): Source {
  onlyKeys(object, ['along_m', 'window_m', 'window_probability', 'probability', 'xy_m', 'tape'])
  const windowM = requiredPair(object, 'window_m')
  const [xM, yM] = requiredPair(object, 'xy_m')
  return {
    alongM: requiredNumber(object, 'along_m', ALONG),
    windowM,
    windowProbability: requiredNumber(object, 'window_probability', SHARE),
    probability: requiredNumber(object, 'probability', SHARE),
    place: { xM, yM },
    tape: readKeyed(jsonObject(field(object, 'tape'), object.file, placeOf(object, 'tape'))),
  }
}

function requiredPair(object: JsonObject, key: string): readonly [number, number] {
  const pair = pairField(object, key, ALONG)
  if (pair === null) throw new FormatError(object.file, placeOf(object, key), 'is missing; two numbers are expected')
  return pair
}

function readPoint(object: JsonObject): PointAnswer {
  onlyKeys(object, [...POINT_KEYS])
  const optional = (key: (typeof POINT_KEYS)[number]) => optionalNumber(object, key, NUMBER)
  return {
    point: requiredNumber(object, 'point', NUMBER),
    alongM: requiredNumber(object, 'along_m', ALONG),
    rank: requiredNumber(object, 'rank', NUMBER),
    nearestProbability: requiredNumber(object, 'nearest_probability', SHARE),
    evidence: {
      levelDbFs: optional('level_dbfs'),
      overFloorDb: optional('over_floor_db'),
      bestBandHz: optional('best_band_hz'),
      ringRatePerS: optional('ring_rate_per_s'),
      medianPitchHz: optional('median_pitch_hz'),
      bubbling: optional('bubbling'),
      clipsUsed: requiredNumber(object, 'clips_used', NUMBER),
    },
    problems: problemList(object),
  }
}

const POINT_KEYS = [
  'point',
  'along_m',
  'rank',
  'nearest_probability',
  'level_dbfs',
  'over_floor_db',
  'best_band_hz',
  'ring_rate_per_s',
  'median_pitch_hz',
  'bubbling',
  'clips_used',
  'problems',
] as const

function readDensity(object: JsonObject): LocateAnswer['density'] {
  onlyKeys(object, ['along_m', 'per_m'])
  const alongM = numberList(object, 'along_m', MOST_DENSITY, ALONG)
  const perM = numberList(object, 'per_m', MOST_DENSITY, NUMBER)
  if (alongM.length === perM.length) return { alongM, perM }
  throw new FormatError(object.file, object.place, 'has lists of different lengths; they belong together')
}

function readSpectrum(object: JsonObject): PointSpectrum {
  onlyKeys(object, ['point', 'mid_hz', 'on_dbfs', 'off_dbfs'])
  const midHz = numberList(object, 'mid_hz', MOST_BANDS, NUMBER)
  const [onDbFs, offDbFs] = [levelList(object, 'on_dbfs'), levelList(object, 'off_dbfs')]
  if (onDbFs.length !== midHz.length || offDbFs.length !== midHz.length) {
    throw new FormatError(object.file, object.place, 'has lists of different lengths; they belong together')
  }
  return { point: requiredNumber(object, 'point', NUMBER), midHz, onDbFs, offDbFs }
}

/** Levels in which `null` stands for a band that says nothing. */
function levelList(object: JsonObject, key: string): (number | null)[] {
  const entries = optionalList(object, key, MOST_BANDS)
  const fields = Object.fromEntries(entries.map((value, i) => [String(i), value]))
  const list: JsonObject = { file: object.file, place: placeOf(object, key), fields }
  return entries.map((_, i) => optionalNumber(list, String(i), NUMBER))
}

function readDigest(object: JsonObject): ClipDigest {
  onlyKeys(object, ['file', 'sha256'])
  const told = field(object, 'sha256')
  return { file: textField(object, 'file', 1000), sha256: told === undefined ? null : textField(object, 'sha256', 64) }
}
