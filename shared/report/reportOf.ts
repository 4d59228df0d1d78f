import type { JobLine } from '../job/job'
import type { ShownUnits } from '../words/shownUnits'
import type { ReportResult } from './reportResult'

/** What a report is made from. */
export interface ReportOf {
  readonly line: JobLine
  /** What was heard; `null`: there is no answer. */
  readonly result: ReportResult | null
  /** What somebody said of just this answer by ear; `null`: nobody did. */
  readonly said: 'yes' | 'no' | 'not sure' | null
  /** For the places within sentences. */
  readonly units?: ShownUnits
}
