import type { JobLine } from '../job/job'
import { windowHeld } from '../job/windowHeld'
import { sentence } from '../words/sentence'
import { cautionItems } from './cautionItems'
import { CHOICE_WORDS } from './choiceWords'
import { heardSection } from './heardSection'
import { mendedItems } from './mendedItems'
import { type ReportItem, type ReportSection, reportItem } from './report'
import type { ReportOf } from './reportOf'
import { testedItems } from './testedItems'

/**
 * What the customer gets to read, in plain words: asked, tested, heard, found, done, cautions, whom to ask.
 *
 * @returns Always the same sections; where nothing was done, the section says so.
 */
export function customerReport(of: ReportOf): ReportSection[] {
  const { line } = of
  return [
    { id: 'asked', heading: 'heading_report_asked', items: askedItems(line) },
    { id: 'tested', heading: 'heading_report_tested', items: testedItems(line) },
    heardSection(of),
    { id: 'found', heading: 'heading_report_found', items: foundItems(line) },
    { id: 'mended', heading: 'heading_report_mended', items: mendedItems(line) },
    { id: 'cautions', heading: 'heading_report_cautions', items: cautionItems() },
    { id: 'ask', heading: 'heading_report_ask', items: [reportItem('report_ask')] },
  ]
}

const PASSES = {
  freely: 'report_passes_freely',
  poorly: 'report_passes_poorly',
  'not at all': 'report_passes_not',
} as const

function askedItems({ complaint }: JobLine): ReportItem[] {
  const items: ReportItem[] = []
  if (complaint?.said) items.push(reportItem('report_said', { said: complaint.said }))
  if (complaint && complaint.ruledOut.length > 0) {
    const what = complaint.ruledOut.map((each) => sentence(CHOICE_WORDS.ruledOut[each], {})).join(', ')
    items.push(reportItem('report_ruled_out', { what }))
  }
  if (complaint?.isolation) items.push(reportItem('report_isolation', { isolation: complaint.isolation }))
  if (complaint?.waterPasses) items.push(reportItem(PASSES[complaint.waterPasses]))
  return items.length === 0 ? [reportItem('report_asked_nothing')] : items
}

function foundItems({ found = [] }: JobLine): ReportItem[] {
  if (found.length === 0) return [reportItem('report_found_nothing_yet')]
  return found.flatMap((each) => {
    const { alongM, way, cause, note, photo, shown } = each
    const values = {
      way: sentence(CHOICE_WORDS.foundWay[way], {}),
      cause: sentence(CHOICE_WORDS.foundCause[cause], {}),
    }
    const what = alongM === null ? reportItem('found_nothing') : reportItem('found_at', { ...values, at_m: alongM })
    const result = windowHeld(each)
    const items = [photo === null ? what : { ...what, photo: photo.sha256 }]
    if (note !== '') items.push(reportItem('label_noted', { note }))
    if (result === null || shown === null) return [...items, reportItem('found_no_window')]
    const window = { from_m: shown.windowM[0], to_m: shown.windowM[1] }
    if (result.errorM === null) return [...items, reportItem('found_window_empty', window)]
    const away_m = Math.abs(result.errorM)
    return [...items, reportItem(result.held ? 'found_held' : 'found_missed', { ...window, away_m })]
  })
}
