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
import { FITTING_MEANS, FITTING_STATES, type FittingCheck, type GaugeReading } from '../pressure/gaugeLog'
import type { BandPoint } from '../pressure/holdFit'
import { HOLD_VERDICTS } from '../pressure/holdVerdicts'
import { PRESSURE_UNITS } from '../pressure/pressureUnit'
import {
  differentIds,
  flagField,
  idField,
  keyedList,
  numberList,
  objectList,
  onlyKeys,
  textField,
  wordField,
} from './fields'
import {
  DROP_OF,
  type KeptJudgement,
  type KeptVerdict,
  MOST_BAND,
  MOST_FITTINGS,
  MOST_HOLD_REASONS,
  MOST_READINGS,
  MOST_TESTS,
  type PressureTest,
} from './pressureTests'

const MOST_NAME = 200
const MOST_NOTE = 2000
const TIME = { low: -1e12, high: 1e12 }
/** What was read is kept even where it cannot be: the judge points it out. */
const READ = { low: -1e9, high: 1e9 }
const STEP = { low: 0, high: 1e6, aboveLow: true }
const KPA = { low: 0, high: 100_000 }
const HOLD = { low: 0, high: 1e6 }
const CELSIUS = { low: -100, high: 200 }
const LENGTH = { low: 0, high: 10_000, aboveLow: true }

/**
 * The pressure tests of a line, under `pressure_tests`.
 *
 * @returns Empty when the key is missing.
 * @throws {FormatError} anything that is no list of tests; an id twice.
 */
export function readPressureTests(line: JsonObject): PressureTest[] {
  const place = placeOf(line, 'pressure_tests')
  const tests = optionalList(line, 'pressure_tests', MOST_TESTS).map((entry, i) =>
    readTest(jsonObject(entry, line.file, `${place}[${i}]`)),
  )
  differentIds(line, 'pressure_tests', tests)
  return tests
}

const TEST_KEYS = [
  'id',
  'name',
  'created_s',
  'clock_start_s',
  'length_m',
  'unit',
  'resolution',
  'readings',
  'least_kpa',
  'most_kpa',
  'least_hold_s',
  'came_up',
  'start_temperature_c',
  'end_temperature_c',
  'fittings',
  'kept',
]

function readTest(object: JsonObject): PressureTest {
  onlyKeys(object, TEST_KEYS)
  const readings = objectList(object, 'readings', MOST_READINGS).map(readReading)
  differentIds(object, 'readings', readings)
  const fittings = objectList(object, 'fittings', MOST_FITTINGS).map(readFitting)
  differentIds(object, 'fittings', fittings)
  return {
    id: idField(object),
    name: textField(object, 'name', MOST_NAME),
    createdS: requiredNumber(object, 'created_s', TIME),
    clockStartS: optionalNumber(object, 'clock_start_s', TIME),
    lengthM: optionalNumber(object, 'length_m', LENGTH),
    unit: wordField(object, 'unit', PRESSURE_UNITS),
    resolution: requiredNumber(object, 'resolution', STEP),
    readings,
    rules: {
      leastKpa: requiredNumber(object, 'least_kpa', KPA),
      mostKpa: requiredNumber(object, 'most_kpa', KPA),
      leastHoldS: requiredNumber(object, 'least_hold_s', HOLD),
    },
    cameUp: field(object, 'came_up') === undefined ? null : flagField(object, 'came_up'),
    startTemperatureC: optionalNumber(object, 'start_temperature_c', CELSIUS),
    endTemperatureC: optionalNumber(object, 'end_temperature_c', CELSIUS),
    fittings,
    kept: readKept(object),
  }
}

function readReading(object: JsonObject): GaugeReading {
  onlyKeys(object, ['id', 'time_s', 'value', 'note', 'left_out'])
  return {
    id: idField(object),
    timeS: requiredNumber(object, 'time_s', TIME),
    value: requiredNumber(object, 'value', READ),
    note: textField(object, 'note', MOST_NOTE),
    leftOut: flagField(object, 'left_out'),
  }
}

function readFitting(object: JsonObject): FittingCheck {
  onlyKeys(object, ['id', 'name', 'state', 'by'])
  return {
    id: idField(object),
    name: textField(object, 'name', MOST_NAME),
    state: wordField(object, 'state', FITTING_STATES),
    by: field(object, 'by') === undefined ? null : wordField(object, 'by', FITTING_MEANS),
  }
}

function readKept(test: JsonObject): KeptVerdict | null {
  const told = field(test, 'kept')
  if (told === undefined) return null
  const object = jsonObject(told, test.file, placeOf(test, 'kept'))
  onlyKeys(object, ['time_s', 'verdict', 'version', 'judged'])
  const judged = field(object, 'judged')
  return {
    timeS: requiredNumber(object, 'time_s', TIME),
    verdict: wordField(object, 'verdict', HOLD_VERDICTS),
    version: textField(object, 'version', 100),
    ...(judged !== undefined && { judged: readJudged(jsonObject(judged, object.file, placeOf(object, 'judged'))) }),
  }
}

function readJudged(object: JsonObject): KeptJudgement {
  onlyKeys(object, ['reasons', 'drop_of', 'fall_kpa_per_min', 'band'])
  const [low, value, high, ...more] = numberList(object, 'fall_kpa_per_min', 3, READ)
  if (low !== undefined && (high === undefined || more.length > 0)) {
    throw new FormatError(
      object.file,
      placeOf(object, 'fall_kpa_per_min'),
      'must hold three numbers [low, value, high]',
    )
  }
  return {
    reasons: keyedList(object, 'reasons', MOST_HOLD_REASONS),
    dropOf: field(object, 'drop_of') === undefined ? null : wordField(object, 'drop_of', DROP_OF),
    fallKpaPerMin: low === undefined ? null : { low, value: value!, high: high! },
    band: readBand(jsonObject(field(object, 'band'), object.file, placeOf(object, 'band'))),
  }
}

function readBand(object: JsonObject): BandPoint[] {
  onlyKeys(object, ['time_s', 'kpa', 'low_kpa', 'high_kpa'])
  const list = (key: string) => numberList(object, key, MOST_BAND, READ)
  const [times, kpa, low, high] = [list('time_s'), list('kpa'), list('low_kpa'), list('high_kpa')]
  if ([kpa, low, high].some(({ length }) => length !== times.length)) {
    throw new FormatError(object.file, object.place, 'has lists of different lengths; they belong together')
  }
  return times.map((timeS, i) => ({ timeS, kpa: kpa[i]!, lowKpa: low[i]!, highKpa: high[i]! }))
}
