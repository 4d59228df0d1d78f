import type { Drill, MachineSaid, QuestionOrder } from './drills/question'

/** One answer of a practice, kept for good. */
export interface PracticeAnswer {
  /** When, s since 1970. */
  readonly timeS: number
  readonly order: QuestionOrder
  readonly truth: string
  readonly said: string
  readonly right: boolean
  readonly errorSpacings: number | null
  readonly machine: MachineSaid | null
  /** Asked again because it was missed: counts neither on the stairs nor in the figures. */
  readonly isRepeat: boolean
}

/** Answers that count: of this drill, heard for the first time. */
export function countedAnswers(answers: readonly PracticeAnswer[], drill: Drill): PracticeAnswer[] {
  return answers.filter(({ order, isRepeat }) => order.drill === drill && !isRepeat)
}
