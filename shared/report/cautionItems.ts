import { CAUTIONS } from '../job/cautions'
import { type ReportItem, reportItem } from './report'

/**
 * Every caution of every step, each once. It takes no job: what was hidden on a screen, or left out of a job, cannot take one
 * out of the report.
 */
export function cautionItems(): ReportItem[] {
  return [...new Set<string>(Object.values(CAUTIONS).flat())].map((key) => reportItem(key))
}
