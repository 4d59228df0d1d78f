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
import { shown } from '../base/shown'
import type { CalibrationBin } from './calibration'
import type { CoverFigures, Evaluation } from './model'
import type { OperatingPoint } from './operatingPoint'
import type { RocArea } from './rocArea'

const SHARE = { low: 0, high: 1 }
const COUNT = { low: 0, high: 1e9 }
const MOST_COVERS = 200
const MOST_BINS = 100

/** One evaluation of a model file. @throws {FormatError} anything that is not as it was written. */
export function readEvaluation(object: JsonObject): Evaluation {
  const keptApart = field(object, 'keptApart')
  if (keptApart !== 'job' && keptApart !== 'device') {
    throw new FormatError(object.file, placeOf(object, 'keptApart'), `is ${shown(keptApart)}; write job or device`)
  }
  return {
    keptApart,
    clips: requiredNumber(object, 'clips', COUNT),
    area: readArea(inner(object, 'area')),
    brier: requiredNumber(object, 'brier', SHARE),
    calibration: entries(object, 'calibration', MOST_BINS).map(readBin),
    atMiss: readPoint(inner(object, 'atMiss')),
    byCover: entries(object, 'byCover', MOST_COVERS).map(readCover),
  }
}

function inner(object: JsonObject, key: string): JsonObject {
  return jsonObject(field(object, key), object.file, placeOf(object, key))
}

function entries(object: JsonObject, key: string, most: number): JsonObject[] {
  return optionalList(object, key, most).map((entry, i) =>
    jsonObject(entry, object.file, `${placeOf(object, key)}[${i}]`),
  )
}

function readArea(object: JsonObject): RocArea {
  return {
    area: requiredNumber(object, 'area', SHARE),
    standardError: requiredNumber(object, 'standardError', SHARE),
    low: requiredNumber(object, 'low', SHARE),
    high: requiredNumber(object, 'high', SHARE),
    leaks: requiredNumber(object, 'leaks', COUNT),
    others: requiredNumber(object, 'others', COUNT),
  }
}

function readBin(object: JsonObject): CalibrationBin {
  return {
    low: requiredNumber(object, 'low', SHARE),
    high: requiredNumber(object, 'high', SHARE),
    said: optionalNumber(object, 'said', SHARE),
    happened: optionalNumber(object, 'happened', SHARE),
    clips: requiredNumber(object, 'clips', COUNT),
  }
}

function readPoint(object: JsonObject): OperatingPoint {
  return {
    threshold: requiredNumber(object, 'threshold', SHARE),
    hits: requiredNumber(object, 'hits', COUNT),
    misses: requiredNumber(object, 'misses', COUNT),
    falseAlarms: requiredNumber(object, 'falseAlarms', COUNT),
    rightlyNot: requiredNumber(object, 'rightlyNot', COUNT),
  }
}

function readCover(object: JsonObject): CoverFigures {
  const cover = field(object, 'cover')
  if (typeof cover !== 'string' || cover.length > MOST_COVERS) {
    throw new FormatError(object.file, placeOf(object, 'cover'), `is ${shown(cover)}; a short text is expected`)
  }
  return {
    cover,
    counts: readPoint(inner(object, 'counts')),
    area: field(object, 'area') === undefined ? null : readArea(inner(object, 'area')),
  }
}
