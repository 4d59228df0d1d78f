import type { JobLine } from '../job/job'
import { heldReadings } from '../pressure/heldReadings'
import { KPA_PER } from '../pressure/pressureUnit'
import { sentence } from '../words/sentence'
import { type ReportItem, reportItem } from './report'

const VERDICTS = {
  holds: 'report_test_holds',
  drops: 'report_test_drops',
  'would not come up to pressure': 'report_test_not_up',
  'cannot tell': 'report_test_cannot_tell',
} as const

/** What a test is called; by its number where nobody gave it a name. */
export function testName({ name }: { readonly name: string }, i: number): string {
  return name === '' ? sentence('label_test_number', { number: i + 1 }) : name
}

/** Every pressure test with its verdict as it was kept, and its curve. An open test proves nothing. */
export function testedItems({ pressureTests = [] }: JobLine): ReportItem[] {
  if (pressureTests.length === 0) return [reportItem('report_untested')]
  return pressureTests.flatMap((test, i) => {
    const name = testName(test, i)
    const verdict = reportItem(test.kept === null ? 'report_test_open' : VERDICTS[test.kept.verdict], { name })
    const held = heldReadings(test)
    const [first] = held
    const last = held.at(-1)
    if (first === undefined || last === undefined || held.length < 2) return [verdict]
    const values = {
      first_fine_kpa: first.value * KPA_PER[test.unit],
      last_fine_kpa: last.value * KPA_PER[test.unit],
      held_min: (last.timeS - first.timeS) / 60,
      count: held.length,
    }
    return [verdict, { ...reportItem('report_readings', values), curveOf: test.id }]
  })
}
