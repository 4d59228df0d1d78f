import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import type { AppState } from '../state'

export interface ShownAnswer {
  readonly answer: LocateAnswer
  /** False while the line or its sweeps have changed since. */
  readonly isCurrent: boolean
}

/** The last answer for a line. */
export function answerOf({ session }: AppState, line: JobLine): ShownAnswer | null {
  const kept = session.answers[line.id]
  if (kept === undefined) return null
  const isCurrent = kept.line === line.line && kept.sweeps === line.sweeps && kept.detector === session.detector
  return { answer: kept.answer, isCurrent }
}
