import type { PressureTest } from './pressureTests'

/** A pressure test in the form of the job's file; `readPressureTests` gives the same again. */
export function pressureTestJson(test: PressureTest): Record<string, unknown> {
  return {
    id: test.id,
    name: test.name,
    created_s: test.createdS,
    clock_start_s: test.clockStartS,
    length_m: test.lengthM,
    unit: test.unit,
    resolution: test.resolution,
    readings: test.readings.map(({ id, timeS, value, note, leftOut }) => ({
      id,
      time_s: timeS,
      value,
      note,
      left_out: leftOut,
    })),
    least_kpa: test.rules.leastKpa,
    most_kpa: test.rules.mostKpa,
    least_hold_s: test.rules.leastHoldS,
    came_up: test.cameUp,
    start_temperature_c: test.startTemperatureC,
    end_temperature_c: test.endTemperatureC,
    fittings: test.fittings.map(({ id, name, state, by }) => ({ id, name, state, by })),
    kept: test.kept && { time_s: test.kept.timeS, verdict: test.kept.verdict, version: test.kept.version },
  }
}
