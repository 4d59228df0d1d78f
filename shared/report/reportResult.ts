import type { JobLine } from '../job/job'
import { type KeepingOf, keepAnswer } from '../job/keepAnswer'
import type { KeptAnswer } from '../job/keptAnswer'
import type { LocateAnswer } from '../locate/answer'

/** An answer as it was worked out just now. */
export interface LiveAnswer extends KeepingOf {
  readonly answer: LocateAnswer
}

/** The answer that a report is made from. */
export interface ReportResult extends KeptAnswer {
  /** `kept` when the job was closed; `now`: the job is not closed; `after`: worked out since it was closed, which the report says. */
  readonly how: 'kept' | 'now' | 'after'
}

/**
 * What a report tells of what was heard: of a closed job the answer as it was kept, and never a newer one in its place.
 *
 * @param live `null` where there is none.
 */
export function reportResult(line: JobLine, live: LiveAnswer | null): ReportResult | null {
  const isClosed = (line.mend?.closedS ?? null) !== null
  if (isClosed && line.keptAnswer !== undefined) return { ...line.keptAnswer, how: 'kept' }
  if (live === null) return null
  return { ...keepAnswer(line, live.answer, live), how: isClosed ? 'after' : 'now' }
}
