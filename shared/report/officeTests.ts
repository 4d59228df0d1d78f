import type { JobLine } from '../job/job'
import type { PressureTest } from '../job/pressureTests'
import { formatNumber } from '../words/formatQuantity'
import { type ReportItem, type ReportSection, reportItem } from './report'
import { testName } from './testedItems'

/** Every pressure test as it was read: gauge, what was asked, all reasons, temperatures, and each reading. */
export function officeTests({ pressureTests = [] }: JobLine): ReportSection {
  const items = pressureTests.length === 0 ? [reportItem('report_untested')] : pressureTests.flatMap(testItems)
  return { id: 'tests', heading: 'heading_office_tests', items }
}

function testItems(test: PressureTest, i: number): ReportItem[] {
  const { id, unit, resolution, readings, rules, kept, lengthM, startTemperatureC, endTemperatureC } = test
  const name = testName(test, i)
  const asked = { least_kpa: rules.leastKpa, most_kpa: rules.mostKpa, hold_min: rules.leastHoldS / 60 }
  const gauge = { name, unit, resolution, count: readings.length, ...asked }
  const rate = kept?.judged?.fallKpaPerMin ?? null
  return [
    { ...reportItem('report_gauge', gauge), inUnitOf: id },
    ...(lengthM === null ? [] : [reportItem('report_test_length', { length_m: lengthM })]),
    ...(kept?.judged?.reasons ?? []).map((reason) => ({ text: reason, inUnitOf: id })),
    ...(rate === null
      ? []
      : [
          {
            ...reportItem('hold_rate', {
              rate_fine_kpa: rate.value,
              low_fine_kpa: rate.low,
              high_fine_kpa: rate.high,
            }),
            inUnitOf: id,
          },
        ]),
    ...(startTemperatureC === null || endTemperatureC === null
      ? []
      : [reportItem('report_temperatures', { start_c: startTemperatureC, end_c: endTemperatureC })]),
    ...(readings.length === 0 ? [] : [reportItem('report_every_reading', { list: listOf(test) })]),
  ]
}

/** `0 s 11.0` and so on, in the order in which they were kept; what was left out stands in brackets. */
function listOf({ readings, resolution }: PressureTest): string {
  const decimals = Math.min(6, /\.(\d+)$/.exec(String(resolution))?.[1]?.length ?? 0)
  return readings
    .map(({ timeS, value, leftOut }) => {
      const text = `${formatNumber(timeS, 0)} s ${formatNumber(value, decimals)}`
      return leftOut ? `(${text})` : text
    })
    .join('; ')
}
