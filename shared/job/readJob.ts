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
import { parseJson } from '../base/parseJson'
import { shown } from '../base/shown'
import { readLineJson } from '../line/readLineJson'
import { safePath } from '../sweep/safePath'
import { CONTACTS, type SweepRow } from '../sweep/sweep'
import { differentIds, flagField, idField, objectList, onlyKeys, problemList, textField, wordField } from './fields'
import {
  CONFIRMATIONS,
  type Confirmation,
  JOB_SCHEMA_VERSION,
  type Job,
  type JobClip,
  type JobLine,
  type JobSweep,
  type KeptSound,
} from './job'
import { readComplaint } from './readComplaint'
import { readDigging } from './readDigging'
import { readFound } from './readFound'
import { readHiddenCautions } from './readHiddenCautions'
import { readKeptAnswer } from './readKeptAnswer'
import { readKeptApart } from './readKeptApart'
import { readMend } from './readMend'
import { readOpinions } from './readOpinions'
import { readPhone } from './readPhone'
import { readPlannedPoints } from './readPlannedPoints'
import { readPressureTests } from './readPressureTests'
import { readRecording } from './readRecording'
import { readSigns } from './readSigns'
import { readSite } from './readSite'

// Chosen: well past any visit, and small enough that nothing downstream grows without bound.
const MOST_LINES = 100
const MOST_SWEEPS = 100
const MOST_CLIPS = 10_000
const MOST_CONFIRMATIONS = 10_000
const MOST_NAME = 200
const MOST_NOTE = 10_000
const MOST_CELL = 100_000
const ALONG = { low: -10_000, high: 10_000 }
const TIME = { low: -1e12, high: 1e12 }
const WHOLE = { low: -1_000_000, high: 1_000_000 }
const AIR_KPA = { low: 0, high: 10_000 }
const BYTES = { low: 0, high: 1e12 }
const VERDICTS = ['located', 'unsure', 'no leak heard'] as const

const FIRST_JOB_KEYS = ['schema_version', 'id', 'name', 'created_s', 'changed_s', 'lines']
const JOB_KEYS = [...FIRST_JOB_KEYS, 'hidden_cautions', 'opinions', 'kept_apart']

/**
 * Reads a job out of anything: storage, a job file, a stranger's mail.
 *
 * @param source   The text of a `job.json`, or the same already parsed.
 * @param fileName For messages.
 * @throws {FormatError} no job; written by a newer version; anything that is not as FORMAT.md of this folder says.
 *   The message names the place, as `lines[0].sweeps[1].clips[3].along_m`.
 */
export function readJob(source: unknown, fileName: string): Job {
  const object = jsonObject(typeof source === 'string' ? parseJson(source, fileName) : source, fileName, '')
  refuseOtherVersions(object)
  onlyKeys(object, JOB_KEYS)
  const lines = objectList(object, 'lines', MOST_LINES).map(readLine)
  differentIds(object, 'lines', lines)
  const hiddenCautions = readHiddenCautions(object)
  const opinions = readOpinions(object)
  const keptApart = readKeptApart(object)
  return {
    id: idField(object),
    name: textField(object, 'name', MOST_NAME),
    createdS: requiredNumber(object, 'created_s', TIME),
    changedS: requiredNumber(object, 'changed_s', TIME),
    lines,
    ...(hiddenCautions.length > 0 && { hiddenCautions }),
    ...(opinions.length > 0 && { opinions }),
    ...(keptApart.length > 0 && { keptApart }),
  }
}

function refuseOtherVersions(object: JsonObject): void {
  const version = field(object, 'schema_version')
  if (version === JOB_SCHEMA_VERSION) return
  const isNewer = typeof version === 'number' && version > JOB_SCHEMA_VERSION
  const mend = isNewer
    ? `is ${version}, from a newer version of the program; open it there, or update this one`
    : `is ${version === undefined ? 'missing' : shown(version)}; this is no job, or a damaged one`
  throw new FormatError(object.file, 'schema_version', mend)
}

const FIRST_LINE_KEYS = ['id', 'name', 'line', 'problems', 'sweeps', 'confirmations']
const LINE_KEYS = [
  ...FIRST_LINE_KEYS,
  'planned_points',
  'signs',
  'site',
  'complaint',
  'pressure_tests',
  'removed_clips',
  'found',
  'mend',
  'kept_answer',
  'digging',
]

function readLine(object: JsonObject): JobLine {
  onlyKeys(object, LINE_KEYS)
  const { line } = readLineJson(field(object, 'line'), `${object.file}, ${placeOf(object, 'line')}`)
  const sweeps = objectList(object, 'sweeps', MOST_SWEEPS).map(readSweep)
  differentIds(object, 'sweeps', sweeps)
  if (new Set(sweeps.map(({ name }) => name)).size < sweeps.length) {
    throw new FormatError(object.file, placeOf(object, 'sweeps'), 'holds two sweeps of one name; names must differ')
  }
  return {
    id: idField(object),
    name: textField(object, 'name', MOST_NAME),
    line,
    problems: problemList(object),
    sweeps,
    confirmations: objectList(object, 'confirmations', MOST_CONFIRMATIONS).map(readConfirmation),
    ...laterParts(object),
  }
}

type LaterPart = Exclude<keyof JobLine, 'id' | 'name' | 'line' | 'problems' | 'sweeps' | 'confirmations'>

/** Parts that older jobs do not have; not there when there is nothing of them. */
function laterParts(object: JsonObject): Pick<JobLine, LaterPart> {
  const plannedPoints = readPlannedPoints(object)
  const signs = readSigns(object)
  const site = readSite(object)
  const complaint = readComplaint(object)
  const pressureTests = readPressureTests(object)
  const found = readFound(object)
  const mend = readMend(object)
  const keptAnswer = readKeptAnswer(object)
  const digging = readDigging(object)
  const hasRemoved = field(object, 'removed_clips') !== undefined
  const removedClips = hasRemoved ? objectList(object, 'removed_clips', MOST_CLIPS).map(readRemovedClip) : []
  return {
    ...(plannedPoints.length > 0 && { plannedPoints }),
    ...(signs.length > 0 && { signs }),
    ...(removedClips.length > 0 && { removedClips }),
    ...(site && { site }),
    ...(complaint && { complaint }),
    ...(pressureTests.length > 0 && { pressureTests }),
    ...(found.length > 0 && { found }),
    ...(mend && { mend }),
    ...(keptAnswer && { keptAnswer }),
    ...(digging && { digging }),
  }
}

function readSweep(object: JsonObject): JobSweep {
  onlyKeys(object, ['id', 'name', 'clips', 'problems'])
  const name = textField(object, 'name', MOST_NAME)
  return {
    id: idField(object),
    name,
    clips: objectList(object, 'clips', MOST_CLIPS).map((clip) => readClip(clip, name)),
    problems: problemList(object),
  }
}

function readRemovedClip(object: JsonObject): JobClip {
  return readClip(object, textField(object, 'sweep', MOST_NAME), [...CLIP_KEYS, 'sweep'])
}

const CLIP_KEYS = [
  'point',
  'along_m',
  'file',
  'air',
  'take',
  'shared_take',
  'offset_m',
  'time_s',
  'contact',
  'air_kpa',
  'note',
  'phone',
  'columns',
  'sha256',
  'bytes',
  'problems',
  'recording',
]

function readClip(object: JsonObject, sweep: string, known: readonly string[] = CLIP_KEYS): JobClip {
  onlyKeys(object, known)
  const row: SweepRow = {
    point: wholeNumber(object, 'point'),
    alongM: requiredNumber(object, 'along_m', ALONG),
    file: readPath(object),
    air: wordField(object, 'air', ['on', 'off']),
    take: wholeNumber(object, 'take'),
    sharedTake: flagField(object, 'shared_take'),
    sweep,
    offsetM: requiredNumber(object, 'offset_m', ALONG),
    timeS: optionalNumber(object, 'time_s', TIME),
    contact: field(object, 'contact') === undefined ? null : wordField(object, 'contact', CONTACTS),
    airKpa: optionalNumber(object, 'air_kpa', AIR_KPA),
    note: textField(object, 'note', MOST_CELL),
    ...readPhone(object),
    unknown: readColumns(object),
  }
  const recording = readRecording(object)
  return { row, sound: readSound(object), problems: problemList(object), ...(recording && { recording }) }
}

function wholeNumber(object: JsonObject, key: string): number {
  const value = requiredNumber(object, key, WHOLE)
  if (Number.isInteger(value)) return value
  throw new FormatError(object.file, placeOf(object, key), `is ${value}; a whole number is expected`)
}

function readPath(object: JsonObject): string {
  const told = textField(object, 'file', 1000)
  const path = safePath(told)
  if (path.ok) return path.path
  throw new FormatError(object.file, placeOf(object, 'file'), `${shown(told)} ${path.mend}`)
}

function readColumns(object: JsonObject): Record<string, string> {
  const columns = jsonObject(field(object, 'columns'), object.file, placeOf(object, 'columns'))
  const names = Object.keys(columns.fields).filter((name) => name !== '__proto__')
  return Object.fromEntries(names.map((name) => [name, textField(columns, name, MOST_CELL)]))
}

function readSound(object: JsonObject): KeptSound | null {
  if (field(object, 'sha256') === undefined) return null
  const sha256 = textField(object, 'sha256', 64)
  if (/^[0-9a-f]{64}$/.test(sha256)) return { sha256, bytes: requiredNumber(object, 'bytes', BYTES) }
  throw new FormatError(
    object.file,
    placeOf(object, 'sha256'),
    `is ${shown(sha256)}; 64 hexadecimal digits are expected`,
  )
}

function readConfirmation(object: JsonObject): Confirmation {
  onlyKeys(object, ['id', 'time_s', 'says', 'note', 'verdict', 'along_m', 'window_m'])
  return {
    id: idField(object),
    timeS: requiredNumber(object, 'time_s', TIME),
    says: wordField(object, 'says', CONFIRMATIONS),
    note: textField(object, 'note', MOST_NOTE),
    verdict: wordField(object, 'verdict', VERDICTS),
    alongM: optionalNumber(object, 'along_m', ALONG),
    windowM: readWindow(object),
  }
}

function readWindow(object: JsonObject): readonly [number, number] | null {
  const told = field(object, 'window_m')
  if (told === undefined) return null
  const place = placeOf(object, 'window_m')
  if (!Array.isArray(told) || told.length !== 2) {
    throw new FormatError(object.file, place, `is ${shown(told)}; two numbers [from, to] are expected`)
  }
  const [fromM, toM] = told.map((end, i) => checkedNumber(end, object.file, `${place}[${i}]`, ALONG))
  return [fromM!, toM!]
}
