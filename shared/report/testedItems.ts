import type { JobLine } from '../job/job'
import type { PressureTest } from '../job/pressureTests'
import { heldReadings } from '../pressure/heldReadings'
import type { DropOf } from '../pressure/judgeHold'
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

const DROPS = {
  line: 'label_drop_of_line',
  'weeping fitting': 'label_drop_of_fitting',
  'fittings not checked': 'label_drop_unchecked',
} as const satisfies Record<DropOf, string>

/** What a test is called; by its number where nobody gave it a name. */
export function testName({ name }: { readonly name: string }, i: number): string {
  return name === '' ? sentence('label_test_number', { number: i + 1 }) : name
}

/** Every pressure test with its verdict as it was kept and why, what was checked, and its curve. An open test proves nothing. */
export function testedItems({ pressureTests = [] }: JobLine): ReportItem[] {
  if (pressureTests.length === 0) return [reportItem('report_untested')]
  return pressureTests.flatMap((test, i) => [
    verdictItem(test, i),
    ...reasonItems(test),
    ...fittingItems(test),
    ...readItems(test),
  ])
}

function verdictItem(test: PressureTest, i: number): ReportItem {
  return reportItem(test.kept === null ? 'report_test_open' : VERDICTS[test.kept.verdict], { name: testName(test, i) })
}

/** The reason that decided, and whose a drop is. */
function reasonItems({ id, kept }: PressureTest): ReportItem[] {
  const judged = kept?.judged
  if (judged === undefined) return []
  const [first] = judged.reasons
  return [
    ...(first === undefined ? [] : [{ text: first, inUnitOf: id }]),
    ...(judged.dropOf === null ? [] : [reportItem(DROPS[judged.dropOf])]),
  ]
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
