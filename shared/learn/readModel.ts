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
import { parseJson } from '../base/parseJson'
import { shown } from '../base/shown'
import { TREE_SPLITS, type Tree } from './boostedTrees'
import { DETECTOR_FEATURES } from './detectorFeatures'
import { type DetectorModel, HEARD_DIGITS, MODEL_VERSION, type ModelCard } from './model'
import { readEvaluation } from './readEvaluation'

const ANY = { low: -1e9, high: 1e9 }
const ABOVE_0 = { low: 0, high: 1e9, aboveLow: true }
const SHARE = { low: 0, high: 1 }
const COUNT = { low: 0, high: 1e9 }
const MOST_TEXT = 4000
const MOST_LISTED = 200
const MOST_HEARD = 20_000
const MOST_TREES = 1000

/**
 * Reads a model file strictly: nothing of it is believed before all of it was looked at.
 *
 * @param file Its name, for messages.
 * @throws {FormatError} another kind of file, a newer version, a list of features that this program does not measure so,
 *   numbers or texts out of bounds.
 */
export function readModel(text: string, file: string): DetectorModel {
  const object = jsonObject(parseJson(text, file), file, '')
  if (field(object, 'format') !== 'yardhark detector') {
    throw new FormatError(file, 'format', 'is not that of a detector; choose a file that was made by training')
  }
  const version = requiredNumber(object, 'version', { low: 1, high: 1e6 })
  if (version > MODEL_VERSION) {
    throw new FormatError(file, 'version', `is ${version}, and this program reads up to ${MODEL_VERSION}; update it`)
  }
  const rows = readFeatures(object)
  const calibration = jsonObject(field(object, 'calibration'), file, 'calibration')
  return {
    features: rows.map(({ id }) => id),
    scaling: { mean: Float64Array.from(rows, (row) => row.mean), sd: Float64Array.from(rows, (row) => row.sd) },
    odds: {
      intercept: requiredNumber(object, 'intercept', ANY),
      weights: Float64Array.from(rows, (row) => row.weight),
    },
    calibration: {
      offset: requiredNumber(calibration, 'offset', ANY),
      slope: requiredNumber(calibration, 'slope', ABOVE_0),
    },
    threshold: requiredNumber(object, 'threshold', SHARE),
    usualDistance: requiredNumber(object, 'usual_distance', ABOVE_0),
    trees: optionalList(object, 'trees', MOST_TREES).map((each, i) => readTree(jsonObject(each, file, `trees[${i}]`))),
    penalty: optionalNumber(object, 'penalty', ABOVE_0),
    heard: readHeard(object),
    card: readCard(jsonObject(field(object, 'card'), file, 'card')),
    evaluations: optionalList(object, 'evaluations', 2).map((each, i) =>
      readEvaluation(jsonObject(each, file, `evaluations[${i}]`)),
    ),
  }
}

function readHeard(object: JsonObject): string[] {
  return optionalList(object, 'heard', MOST_HEARD).map((digits, i) => {
    if (typeof digits === 'string' && digits.length === HEARD_DIGITS && /^[0-9a-f]+$/.test(digits)) return digits
    throw new FormatError(
      object.file,
      `heard[${i}]`,
      `is ${shown(digits)}; ${HEARD_DIGITS} hexadecimal digits are expected`,
    )
  })
}

function readTree(tree: JsonObject): Tree {
  const numbers = (key: string, count: number, { low, high }: { low: number; high: number }) => {
    const list = optionalList(tree, key, count)
    if (list.length !== count) {
      throw new FormatError(tree.file, placeOf(tree, key), `has ${list.length} numbers; ${count} are expected`)
    }
    return list.map((each, i) => {
      if (typeof each === 'number' && each >= low && each <= high) return each
      const place = `${placeOf(tree, key)}[${i}]`
      throw new FormatError(tree.file, place, `is ${shown(each)}; a number from ${low} to ${high} is expected`)
    })
  }
  const column = numbers('column', TREE_SPLITS, { low: -1, high: DETECTOR_FEATURES.length - 1 })
  const odd = column.findIndex((each) => !Number.isInteger(each))
  if (odd >= 0) {
    throw new FormatError(tree.file, `${placeOf(tree, 'column')}[${odd}]`, 'is not whole; name one of the features')
  }
  return { column, limit: numbers('limit', TREE_SPLITS, ANY), odds: numbers('odds', TREE_SPLITS + 1, ANY) }
}

function readFeatures(object: JsonObject) {
  const rows = optionalList(object, 'features', 1000).map((each, i) => {
    const row = jsonObject(each, object.file, `features[${i}]`)
    return {
      id: text(row, 'id'),
      mean: requiredNumber(row, 'mean', ANY),
      sd: requiredNumber(row, 'sd', ABOVE_0),
      weight: requiredNumber(row, 'weight', ANY),
    }
  })
  const known = DETECTOR_FEATURES.map(({ id }) => id)
  const odd = known.findIndex((id, i) => rows[i]?.id !== id)
  if (odd >= 0 || rows.length !== known.length) {
    const at = odd >= 0 ? odd : known.length
    const found = rows[at] === undefined ? 'ends' : `has ${shown(rows[at].id)}`
    throw new FormatError(
      object.file,
      `features[${at}]`,
      `${found} where this program measures ${known[at] ?? 'nothing more'}; train the detector anew with this version`,
    )
  }
  return rows
}

function readCard(card: JsonObject): ModelCard {
  const list = (key: string) =>
    optionalList(card, key, MOST_LISTED).map((entry, i) => checkedText(entry, card.file, `${placeOf(card, key)}[${i}]`))
  return {
    name: text(card, 'name'),
    data: text(card, 'data'),
    trainedAt: text(card, 'trainedAt'),
    programVersion: text(card, 'programVersion'),
    leaks: requiredNumber(card, 'leaks', COUNT),
    others: requiredNumber(card, 'others', COUNT),
    jobs: requiredNumber(card, 'jobs', COUNT),
    devices: list('devices'),
    covers: list('covers'),
    limits: list('limits'),
  }
}

function text(object: JsonObject, key: string): string {
  return checkedText(field(object, key), object.file, placeOf(object, key))
}

function checkedText(value: unknown, file: string, place: string): string {
  if (typeof value !== 'string') throw new FormatError(file, place, `is ${shown(value)}; a text is expected`)
  if (value.length > MOST_TEXT)
    throw new FormatError(file, place, `has ${value.length} characters; at most ${MOST_TEXT}`)
  return value
}
