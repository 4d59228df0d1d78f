import type { ReportOf } from './customerReport'
import { type ReportItem, type ReportSection, reportItem } from './report'
import { testName } from './testedItems'

/**
 * What the office wants to know besides: which clips and readings every result came from, and which version gave it.
 *
 * @param version Of the program that makes the report.
 */
export function officeReport({ line, answer }: ReportOf, version: string): ReportSection {
  const items: ReportItem[] = []
  if (answer !== null) {
    const used = answer.clips.filter((clip) => clip.used).length
    const sweeps = line.sweeps.map(({ name }) => name).join(', ')
    items.push(reportItem('report_clips', { used, clips: answer.clips.length, sweeps }))
    items.push(...answer.reasons.map((reason) => ({ text: reason })))
    const ranked = [...answer.points].sort((a, b) => a.rank - b.rank).slice(0, MOST_POINTS)
    for (const { point, alongM, rank, nearestProbability } of ranked) {
      items.push(reportItem('report_point', { point, along_m: alongM, rank, probability: nearestProbability }))
    }
  }
  for (const [i, test] of (line.pressureTests ?? []).entries()) {
    const name = testName(test, i)
    const { unit, resolution, readings, rules, kept } = test
    const asked = { least_kpa: rules.leastKpa, most_kpa: rules.mostKpa, hold_min: rules.leastHoldS / 60 }
    items.push(reportItem('report_gauge', { name, unit, resolution, count: readings.length, ...asked }))
    if (kept !== null) items.push(reportItem('report_verdict_version', { name, version: kept.version }))
  }
  for (const { shown } of line.found ?? []) {
    if (shown !== null) items.push(reportItem('report_window_version', { version: shown.version }))
  }
  return {
    id: 'office',
    heading: 'heading_report_office',
    items: [...items, reportItem('report_version', { version })],
  }
}

/** Chosen: what fits on a page; the answer's own file has them all. */
const MOST_POINTS = 12
