import type { LocateAnswer } from '../locate/answer'
import type { Confirmation, JobLine } from './job'

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
