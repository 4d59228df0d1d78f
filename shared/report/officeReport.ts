import { officeLine } from './officeLine'
import { officeSweep } from './officeSweep'
import { officeTests } from './officeTests'
import { type ReportItem, type ReportSection, reportItem } from './report'
import type { ReportOf } from './reportOf'
import { testName } from './testedItems'

/**
 * What the office wants to know besides: the line as it was told, the sweep point by point, its spectra, the readings, and
 * which clips, readings, settings and version every result came from.
 *
 * @param version Of the program that makes the report.
 */
export function officeReport(of: ReportOf, version: string): ReportSection[] {
  const spectra = of.result?.spectra ?? []
  return [
    officeLine(of),
    ...(of.result === null ? [] : [officeSweep(of.line, of.result)]),
    ...(spectra.length === 0
      ? []
      : [
          {
            id: 'spectra' as const,
            heading: 'heading_office_spectra',
            items: [reportItem('report_spectra_how')],
            spectra,
          },
        ]),
    officeTests(of.line),
    { id: 'provenance', heading: 'heading_office_provenance', items: provenanceItems(of, version) },
  ]
}

const HOW = { kept: 'report_answer_kept', now: 'report_answer_now', after: 'report_answer_after' } as const

function provenanceItems({ line, result }: ReportOf, version: string): ReportItem[] {
  const items: ReportItem[] = []
  if (result !== null) {
    const used = result.answer.clips.filter((clip) => clip.used).length
    const sweeps = line.sweeps.map(({ name }) => name).join(', ')
    items.push(reportItem('report_clips', { used, clips: result.answer.clips.length, sweeps }))
    items.push(reportItem(HOW[result.how], { version: result.version }))
  }
  for (const [i, test] of (line.pressureTests ?? []).entries()) {
    const { kept, readings } = test
    const name = testName(test, i)
    const count = readings.filter(({ leftOut }) => !leftOut).length
    if (kept !== null) items.push(reportItem('report_verdict_version', { name, version: kept.version, count }))
  }
  for (const { shown } of line.found ?? []) {
    if (shown !== null) items.push(reportItem('report_window_version', { version: shown.version }))
  }
  return [...items, reportItem('report_never_anew'), reportItem('report_version', { version })]
}
