import { countedAnswers, type PracticeAnswer } from './answers'
import type { Drill, QuestionOrder } from './drills/question'
import { stairsAfter } from './staircase/staircase'

/** What was missed comes back after so many other questions; each time it is right, later; after the last, no more. Chosen. */
export const COMES_BACK_AFTER = [2, 6, 15] as const

/** The next question of a drill: what was missed and is due, else a new one at the level of the stairs. */
export interface NextOrder {
  readonly order: QuestionOrder
  readonly isRepeat: boolean
}

/**
 * What is asked next. It follows from the answers alone, so that a page that was closed goes on where it was.
 *
 * @param answers All answers so far, in order of time. @param own Seed of this device, so that no two ask the same.
 */
export function nextOrder(answers: readonly PracticeAnswer[], drill: Drill, own: string): NextOrder {
  const mine = answers.filter(({ order }) => order.drill === drill)
  const due = dueAgain(mine)
  if (due !== null) return { order: due, isRepeat: true }
  const counted = countedAnswers(mine, drill)
  const { levelDb } = stairsAfter(counted)
  return { order: { drill, seed: `${own}/${drill}/${counted.length + 1}`, levelDb }, isRepeat: false }
}

/** How many of a drill were missed and wait to come back. */
export function waitingAgain(answers: readonly PracticeAnswer[], drill: Drill): number {
  return waiting(answers.filter(({ order }) => order.drill === drill)).size
}

function dueAgain(mine: readonly PracticeAnswer[]): QuestionOrder | null {
  for (const { order, dueAt } of waiting(mine).values()) if (mine.length >= dueAt) return order
  return null
}

function waiting(mine: readonly PracticeAnswer[]): Map<string, { order: QuestionOrder; dueAt: number; step: number }> {
  const list = new Map<string, { order: QuestionOrder; dueAt: number; step: number }>()
  for (const [i, { order, right }] of mine.entries()) {
    const before = list.get(order.seed)
    list.delete(order.seed)
    const step = !right ? 0 : before === undefined ? null : before.step + 1
    if (step === null || step >= COMES_BACK_AFTER.length) continue
    list.set(order.seed, { order, step, dueAt: i + 1 + COMES_BACK_AFTER[step]! })
  }
  return list
}
