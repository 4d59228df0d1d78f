import type { JobLine } from '../job/job'
import type { MendPart, MendStep } from '../job/mend'
import { partProof } from '../job/partProof'
import { sentence } from '../words/sentence'
import { CHOICE_WORDS } from './choiceWords'
import { type ReportItem, reportItem } from './report'

/** What was cut, proved and done. A part is proved only by a closed test that held. */
export function mendedItems(line: JobLine): ReportItem[] {
  const { mend } = line
  if (mend === undefined) return [reportItem('report_not_mended')]
  const { cutAtM, parts, steps, joint } = mend
  const items = [
    ...(cutAtM === null ? [] : [reportItem('report_cut', { at_m: cutAtM })]),
    ...stepItems(steps),
    ...(joint.startS === null
      ? []
      : [reportItem('report_joint', { adhesive: sentence(CHOICE_WORDS.adhesive[joint.adhesive], {}) })]),
    ...parts.map((part) => partItem(part, line, joint.startS)),
  ]
  return items.length === 0 ? [reportItem('report_not_mended')] : items
}

function partItem(part: MendPart, { pressureTests = [] }: JobLine, jointS: number | null): ReportItem {
  const proof = partProof(part, pressureTests)
  const values = { name: part.name, from_m: part.fromM, to_m: part.toM }
  if (proof.state !== 'holds') return reportItem('report_part_not_proved', values)
  if (jointS === null) return reportItem('report_part_proved', values)
  const isAfter = proof.test.createdS >= jointS
  return reportItem(isAfter ? 'report_part_proved_after' : 'report_part_proved_before', values)
}

/** What was done and what was not, each in one sentence. */
function stepItems(steps: readonly MendStep[]): ReportItem[] {
  const told = steps.filter(({ text }) => text.trim() !== '')
  const list = (isDone: boolean) =>
    told
      .filter(({ done }) => done === isDone)
      .map(({ text }) => text.trim().replace(/[.;]+$/, ''))
      .join('; ')
  const [done, open] = [list(true), list(false)]
  return [
    ...(done === '' ? [] : [reportItem('report_steps_done', { steps: done })]),
    ...(open === '' ? [] : [reportItem('report_steps_open', { steps: open })]),
  ]
}
