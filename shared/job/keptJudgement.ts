import type { HoldJudgement } from '../pressure/judgeHold'
import type { KeptJudgement } from './pressureTests'

/** What of a judgement is kept when its test is closed. */
export function keptJudgement({ reasons, dropOf, fit }: HoldJudgement): KeptJudgement {
  return { reasons, dropOf, fallKpaPerMin: fit?.fallKpaPerMin ?? null, band: fit?.band ?? [] }
}
