import { FormatError } from '../base/errors'
import {
  checkedNumber,
  field,
  type JsonObject,
  jsonObject,
  type NumberLimits,
  optionalList,
  optionalNumber,
  placeOf,
  requiredNumber,
  requiredText,
  unknownFields,
} from '../base/jsonFields'
import { nearestWord } from '../base/nearestWord'
import { parseJson } from '../base/parseJson'
import type { Problem } from '../base/problem'
import { printable, shown } from '../base/shown'
import {
  COVERS,
  FITTING_KINDS,
  type Line,
  NOISE_KINDS,
  type OnLine,
  PIPE_MATERIALS,
  type Pipe,
  type SketchPlace,
  type Stretch,
} from './line'

/** Keys of the file this version knows. */
const KEYS = [
  'length_m',
  'depth_m',
  'air_inlet_m',
  'vertices',
  'route_sd_m',
  'stretches',
  'fittings',
  'noises',
  'pipe',
] as const
const STRETCH_KEYS = ['from_m', 'to_m', 'cover', 'depth_m', 'dig_cost_per_m', 'dig_min_per_m']
const ON_LINE_KEYS = ['at_m', 'kind']
const PIPE_KEYS = ['nominal_in', 'material']

// Chosen: well past any yard, and small enough that nothing downstream grows without bound.
const ALONG: NumberLimits = { low: -10_000, high: 10_000 }
const LENGTH: NumberLimits = { low: 0.01, high: 10_000 }
/** The shallowest is what `--depth` takes too. Chosen: what lies flat on the ground is no buried line. */
const DEPTH: NumberLimits = { low: 0.01, high: 20 }
const ROUTE_SD: NumberLimits = { low: 0, high: 100 }
const COST: NumberLimits = { low: 0, high: 1e9 }
const DIG_MIN: NumberLimits = { low: 0, high: 100_000 }
const NOMINAL: NumberLimits = { low: 0, high: 120, aboveLow: true }
const MOST_TEXT = 1_000_000
const MOST_VERTICES = 1000
const MOST_PARTS = 1000
/** Each is one more source in the fit. Chosen: more machines than a yard has. */
const MOST_NOISES = 12

/** A told length and a drawn path that differ by more than this share are told of; the binding rule of the format. */
const PATH_TOLERANCE = 0.01

/** Below this share the path is left as it is, so that what was written reads back without a change. */
const PATH_ROUNDING = 1e-9

/** Shorter paths are a slip, and would be stretched without bound. */
const SHORTEST_PATH_M = 0.001

/** Known keys are worth guessing at only this often. */
const MOST_GUESSES = 10

/**
 * Reads what was told of a line.
 *
 * @param source   The text of a `line.json`, or the same already parsed.
 * @param fileName For messages.
 * @returns The line, with its path stretched evenly to `length_m` where both are told (with a problem when they differ
 *   by more than 1 %); unknown keys kept, at any depth; unknown covers, kinds and materials read as `other`, each with
 *   a problem, and kept as written.
 * @throws {FormatError} no JSON; text for a number; a number that is not finite or outside its limits (a length of
 *   10 mm to 10 km); from past to; a path without a length, of more than 1000 corners; more than 1000 parts of a kind. The message
 *   names the place, as `stretches[2].to_m`.
 */
export function readLineJson(source: unknown, fileName: string): { line: Line; problems: Problem[] } {
  const object = jsonObject(typeof source === 'string' ? parsed(source, fileName) : source, fileName, '')
  const problems: Problem[] = []
  const path = readVertices(object)
  const lengthM = optionalNumber(object, 'length_m', LENGTH) ?? (path && lengthOf(path))
  const line: Line = {
    lengthM,
    depthM: optionalNumber(object, 'depth_m', DEPTH),
    airInletM: optionalNumber(object, 'air_inlet_m', ALONG),
    vertices: path && stretchedTo(path, lengthM!, problems),
    routeSdM: optionalNumber(object, 'route_sd_m', ROUTE_SD),
    stretches: parts(object, 'stretches').map((part) => readStretch(part, problems)),
    fittings: parts(object, 'fittings').map((part) => readOnLine(part, FITTING_KINDS, problems)),
    noises: parts(object, 'noises', MOST_NOISES).map((part) => readOnLine(part, NOISE_KINDS, problems)),
    pipe: readPipe(object, problems),
    unknown: unknownFields(object, KEYS),
  }
  guessMeantKeys(object, problems)
  noteOverlaps(line.stretches, problems)
  noteBeyondEnd(line, problems)
  return { line, problems }
}

function parsed(text: string, fileName: string): unknown {
  if (text.length > MOST_TEXT) {
    throw new FormatError(
      fileName,
      '',
      `holds ${text.length} characters, and at most ${MOST_TEXT} are read; keep to the line`,
    )
  }
  return parseJson(text, fileName)
}

function readVertices(object: JsonObject): SketchPlace[] | null {
  if (field(object, 'vertices') === undefined) return null
  const corners = optionalList(object, 'vertices', MOST_VERTICES).map((corner, i) => {
    const place = `vertices[${i}]`
    if (!Array.isArray(corner) || corner.length !== 2) {
      throw new FormatError(object.file, place, `is ${shown(corner)}; two numbers [x, y] are expected`)
    }
    return {
      xM: checkedNumber(corner[0], object.file, `${place}[0]`, ALONG),
      yM: checkedNumber(corner[1], object.file, `${place}[1]`, ALONG),
    }
  })
  if (corners.length < 2) {
    throw new FormatError(
      object.file,
      'vertices',
      `has too few corners, ${corners.length}; a path needs its start and its end`,
    )
  }
  const lengthM = lengthOf(corners)
  if (lengthM < SHORTEST_PATH_M) {
    throw new FormatError(object.file, 'vertices', 'are all in one place; a path needs a length')
  }
  if (lengthM > LENGTH.high) {
    throw new FormatError(
      object.file,
      'vertices',
      `make a path of ${Math.round(lengthM)} m; at most ${LENGTH.high} is read`,
    )
  }
  return corners
}

/** Corner to corner; the path itself would merge corners, and so hide that all are in one place. */
function lengthOf(corners: readonly SketchPlace[]): number {
  return corners.slice(1).reduce((sum, { xM, yM }, i) => sum + Math.hypot(xM - corners[i]!.xM, yM - corners[i]!.yM), 0)
}

function stretchedTo(path: SketchPlace[], lengthM: number, problems: Problem[]): SketchPlace[] {
  const pathM = lengthOf(path)
  const apart = Math.abs(pathM - lengthM) / lengthM
  if (apart > PATH_TOLERANCE) {
    problems.push({ key: 'line_path_stretched', severity: 'note', values: { path_m: pathM, length_m: lengthM } })
  }
  if (apart <= PATH_ROUNDING) return path
  const [start] = path
  const factor = lengthM / pathM
  return path.map(({ xM, yM }) => ({
    xM: start!.xM + (xM - start!.xM) * factor,
    yM: start!.yM + (yM - start!.yM) * factor,
  }))
}

function parts(object: JsonObject, key: string, most = MOST_PARTS): JsonObject[] {
  return optionalList(object, key, most).map((part, i) => jsonObject(part, object.file, `${key}[${i}]`))
}

function readStretch(part: JsonObject, problems: Problem[]): Stretch {
  const fromM = requiredNumber(part, 'from_m', ALONG)
  const toM = requiredNumber(part, 'to_m', ALONG)
  if (fromM > toM) {
    throw new FormatError(part.file, part.place, `from_m ${fromM} is past to_m ${toM}; write the nearer end first`)
  }
  const cover = knownWord(part, 'cover', COVERS, problems)
  const digMinPerM = optionalNumber(part, 'dig_min_per_m', DIG_MIN)
  return {
    fromM,
    toM,
    cover,
    depthM: optionalNumber(part, 'depth_m', DEPTH),
    digCostPerM: optionalNumber(part, 'dig_cost_per_m', COST),
    ...(digMinPerM !== null && { digMinPerM }),
    ...kept(part, STRETCH_KEYS, 'cover', cover),
  }
}

function readOnLine<Kind extends string>(part: JsonObject, kinds: readonly Kind[], problems: Problem[]): OnLine<Kind> {
  const kind = knownWord(part, 'kind', kinds, problems)
  return { atM: requiredNumber(part, 'at_m', ALONG), kind, ...kept(part, ON_LINE_KEYS, 'kind', kind) }
}

function readPipe(object: JsonObject, problems: Problem[]): Pipe | null {
  const value = field(object, 'pipe')
  if (value === undefined) return null
  const part = jsonObject(value, object.file, 'pipe')
  const material = knownWord(part, 'material', PIPE_MATERIALS, problems)
  return {
    nominalIn: optionalNumber(part, 'nominal_in', NOMINAL),
    material,
    ...kept(part, PIPE_KEYS, 'material', material),
  }
}

/** One of the known words; `other`, with a problem, for any other text. */
function knownWord<Word extends string>(
  part: JsonObject,
  key: string,
  known: readonly Word[],
  problems: Problem[],
): Word {
  const told = requiredText(part, key, known)
  const word = known.find((candidate) => candidate === told.trim().toLowerCase())
  if (word !== undefined) return word
  const values = { place: placeOf(part, key), value: printable(told, 60), known: known.join(', ') }
  problems.push({ key: 'line_value_unknown', severity: 'note', values })
  return 'other' as Word
}

/** The part's unknown keys, and its word as written when that was read as `other`. */
function kept(part: JsonObject, keys: readonly string[], wordKey: string, word: string): Pick<Stretch, 'unknown'> {
  const told = part.fields[wordKey] as string
  const unknown = unknownFields(part, keys)
  if (word === 'other' && told.trim().toLowerCase() !== 'other') unknown[wordKey] = told
  return Object.keys(unknown).length === 0 ? {} : { unknown }
}

/** A mistyped key would otherwise be kept, and left out of the answer, without a word. */
function guessMeantKeys(object: JsonObject, problems: Problem[]): void {
  if (Object.hasOwn(object.fields, '__proto__')) {
    problems.push({ key: 'line_key_left_out', severity: 'note', values: { name: '__proto__' } })
  }
  const missing = KEYS.filter((key) => !Object.hasOwn(object.fields, key))
  for (const name of Object.keys(object.fields).slice(0, MOST_GUESSES + KEYS.length)) {
    const meant = (KEYS as readonly string[]).includes(name) ? null : nearestWord(name, missing)
    if (meant !== null) {
      problems.push({ key: 'line_key_like', severity: 'note', values: { name: printable(name, 60), meant } })
    }
  }
}

function noteOverlaps(stretches: readonly Stretch[], problems: Problem[]): void {
  const sorted = [...stretches].sort((a, b) => a.fromM - b.fromM)
  for (const [i, stretch] of sorted.entries()) {
    const next = sorted[i + 1]
    if (next && next.fromM < stretch.toM) {
      const values = { from_m: next.fromM, to_m: Math.min(stretch.toM, next.toM) }
      problems.push({ key: 'line_stretches_overlap', severity: 'note', values })
      return
    }
  }
}

function noteBeyondEnd(line: Line, problems: Problem[]): void {
  const { lengthM } = line
  if (lengthM === null) return
  const reaches = [
    ...line.stretches.map((stretch, i) => ({ place: `stretches[${i}].to_m`, atM: stretch.toM })),
    ...line.fittings.map((fitting, i) => ({ place: `fittings[${i}].at_m`, atM: fitting.atM })),
  ]
  const beyond = reaches.find(({ atM }) => atM > lengthM * (1 + PATH_TOLERANCE))
  if (beyond === undefined) return
  const values = { place: beyond.place, at_m: beyond.atM, length_m: lengthM }
  problems.push({ key: 'line_beyond_end', severity: 'note', values })
}
