import { countedAnswers, type PracticeAnswer } from './answers'
import { waitingToComeBack } from './comesBack'
import type { Drill, QuestionOrder } from './drills/question'
import { stairsAfter } from './staircase/staircase'

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
  for (const [seed, { dueAt }] of waiting(mine)) {
    if (mine.length >= dueAt) return mine.find(({ order }) => order.seed === seed)!.order
  }
  return null
}

function waiting(mine: readonly PracticeAnswer[]) {
  return waitingToComeBack(mine.map(({ order, right }) => ({ key: order.seed, right })))
}
