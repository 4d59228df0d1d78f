import type { Confirmation, JobLine } from '../../../../shared/job/job'
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
  return { answer: kept.answer, isCurrent: kept.line === line.line && kept.sweeps === line.sweeps }
}

/** The last thing said of just this answer; `null` when nobody has said anything of it. */
export function confirmationOf(line: JobLine, answer: LocateAnswer): Confirmation | null {
  const [best] = answer.sources
  const isOfIt = ({ verdict, alongM }: Confirmation) =>
    verdict === answer.verdict && isNear(alongM, best?.alongM ?? null)
  return line.confirmations.filter(isOfIt).at(-1) ?? null
}

/** The same sweeps and line give the same place; another build of the page may round otherwise. */
function isNear(aM: number | null, bM: number | null): boolean {
  return aM === null || bM === null ? aM === bM : Math.abs(aM - bM) < 1e-6
}
