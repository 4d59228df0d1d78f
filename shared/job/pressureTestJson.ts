import type { KeptJudgement, KeptVerdict, PressureTest } from './pressureTests'

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
    kept: test.kept && keptFields(test.kept),
  }
}

function keptFields({ timeS, verdict, version, judged }: KeptVerdict): Record<string, unknown> {
  return { time_s: timeS, verdict, version, ...(judged && { judged: judgedFields(judged) }) }
}

function judgedFields({ reasons, dropOf, fallKpaPerMin, band }: KeptJudgement): Record<string, unknown> {
  return {
    reasons: reasons.map(({ key, values }) => ({ key, values })),
    drop_of: dropOf,
    fall_kpa_per_min: fallKpaPerMin && [fallKpaPerMin.low, fallKpaPerMin.value, fallKpaPerMin.high],
    band: {
      time_s: band.map(({ timeS }) => timeS),
      kpa: band.map(({ kpa }) => kpa),
      low_kpa: band.map(({ lowKpa }) => lowKpa),
      high_kpa: band.map(({ highKpa }) => highKpa),
    },
  }
}
