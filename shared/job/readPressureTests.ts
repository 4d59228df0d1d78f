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
import { HOLD_VERDICTS } from '../pressure/holdVerdicts'
import { PRESSURE_UNITS } from '../pressure/pressureUnit'
import { differentIds, flagField, idField, objectList, onlyKeys, textField, wordField } from './fields'
import { type KeptVerdict, MOST_FITTINGS, MOST_READINGS, MOST_TESTS, type PressureTest } from './pressureTests'

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
  onlyKeys(object, ['time_s', 'verdict', 'version'])
  return {
    timeS: requiredNumber(object, 'time_s', TIME),
    verdict: wordField(object, 'verdict', HOLD_VERDICTS),
    version: textField(object, 'version', 100),
  }
}
