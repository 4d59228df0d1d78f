import { Random } from '../../../shared/base/random'
import { judgeHold } from '../../../shared/pressure/judgeHold'
import { drawHold, type HoldKind } from './drawHold'

export interface HoldCounts {
  readonly kind: HoldKind
  readonly holds: number
  readonly drops: number
  readonly cannotTell: number
  /** Held, without a word of what no gauge can see. */
  readonly unsaid: number
  /** How often each reason came first. */
  readonly why: ReadonlyMap<string, number>
}

/** Judges so many simulated tests of a kind; the same seeds draw the same tests. */
export function runHolds(seeds: string, kind: HoldKind, count: number): HoldCounts {
  const verdicts = new Map<string, number>()
  const why = new Map<string, number>()
  let unsaid = 0
  for (let i = 0; i < count; i++) {
    const { test, pipe } = drawHold(Random.named(`${seeds}/${kind}`, String(i)), kind)
    const { verdict, reasons } = judgeHold(test, pipe)
    verdicts.set(verdict, (verdicts.get(verdict) ?? 0) + 1)
    const first = reasons[0]!.key
    why.set(first, (why.get(first) ?? 0) + 1)
    if (verdict === 'holds' && !reasons.some(({ key }) => key === 'hold_unseen_cancelling')) unsaid++
  }
  const of = (verdict: string) => verdicts.get(verdict) ?? 0
  return { kind, holds: of('holds'), drops: of('drops'), cannotTell: of('cannot tell'), unsaid, why }
}
