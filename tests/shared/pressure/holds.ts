import { DEFAULT_HOLD_RULES, type GaugeReading, type HoldTest } from '../../../shared/pressure/gaugeLog'

/** Readings a minute apart, from the start of the clock. */
export const everyMinute = (values: readonly number[]): GaugeReading[] =>
  values.map((value, i) => reading(60 * i, value))

export const reading = (timeS: number, value: number): GaugeReading => ({
  id: `r${timeS}-${value}`,
  timeS,
  value,
  note: '',
  leftOut: false,
})

/** A hold test in psi, read to a tenth, nothing told of temperature, no fitting looked at. */
export const holdTest = (readings: readonly GaugeReading[], told: Partial<HoldTest> = {}): HoldTest => ({
  unit: 'psi',
  resolution: 0.1,
  readings,
  rules: DEFAULT_HOLD_RULES.psi,
  cameUp: null,
  startTemperatureC: null,
  endTemperatureC: null,
  fittings: [],
  ...told,
})
