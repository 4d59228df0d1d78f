import type { JobLine } from '../job/job'
import type { PressureTest } from '../job/pressureTests'
import { heldReadings } from '../pressure/heldReadings'
import { KPA_PER } from '../pressure/pressureUnit'
import { sentence } from '../words/sentence'
import { CHOICE_WORDS } from './choiceWords'
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

/** Every pressure test with its verdict as it was kept and why, what was checked, and its curve. An open test proves nothing. */
export function testedItems({ pressureTests = [] }: JobLine): ReportItem[] {
  if (pressureTests.length === 0) return [reportItem('report_untested')]
  const hasProof = pressureTests.some(({ kept }) => kept?.verdict === 'holds')
  return [
    ...pressureTests.flatMap((test, i) =>
      [verdictItem(test, i), ...reasonItems(test), ...fittingItems(test), ...readItems(test)].map((item) => ({
        ...item,
        group: test.id,
      })),
    ),
    ...(hasProof ? [reportItem(ONCE)] : []),
  ]
}

function verdictItem(test: PressureTest, i: number): ReportItem {
  return reportItem(test.kept === null ? 'report_test_open' : VERDICTS[test.kept.verdict], { name: testName(test, i) })
}

/** Said with every proof, and here once for all of them. */
const ONCE = 'hold_unseen_cancelling'

/** For who reads the gauge, not for the customer; the office is told of it. */
const ADVICE = 'hold_temperature_not_told'

/** Why, as the judge gave it when the test was closed. */
function reasonItems({ id, kept }: PressureTest): ReportItem[] {
  const reasons = kept?.judged?.reasons ?? []
  return reasons.filter(({ key }) => key !== ONCE && key !== ADVICE).map((reason) => ({ text: reason, inUnitOf: id }))
}

function fittingItems({ fittings }: PressureTest): ReportItem[] {
  if (fittings.length === 0) return []
  const what = fittings.map(({ name, state, by }, i) => {
    const named = name === '' ? sentence('label_fitting_name', { number: i + 1 }) : name
    const states = [sentence(CHOICE_WORDS.fittingState[state], {})]
    if (by !== null) states.push(sentence(CHOICE_WORDS.fittingMeans[by], {}))
    return sentence('label_fitting_said', { name: named, state: states.join(', ') })
  })
  return [reportItem('report_fittings', { what: what.join('; ') })]
}

function readItems(test: PressureTest): ReportItem[] {
  const held = heldReadings(test)
  const [first, last] = [held[0], held.at(-1)]
  if (first === undefined || last === undefined || held.length < 2) return []
  const values = {
    first_fine_kpa: first.value * KPA_PER[test.unit],
    last_fine_kpa: last.value * KPA_PER[test.unit],
    held_min: (last.timeS - first.timeS) / 60,
    count: held.length,
  }
  return [{ ...reportItem('report_readings', values), curveOf: test.id, inUnitOf: test.id }]
}
