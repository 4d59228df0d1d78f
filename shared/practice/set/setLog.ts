import type { SetAnswer } from './practiceSet'

/** An answer to a clip of a set as it is kept where it was given. */
export interface LoggedAnswer extends SetAnswer {
  /** When, s since 1970; not there in what an older version kept. */
  readonly timeS?: number
  /** How far what sounds stands over the same place without it, in its best band, dB; `null` where nobody has that clip. */
  readonly levelDb?: number | null
}

/** An answer to a clip that was missed before and came back: it does not count again. */
export interface RepeatedAnswer extends LoggedAnswer {
  /** So many clips had their first answer by then. */
  readonly after: number
}

/** Everything that was answered to a set on this device. */
export interface SetLog {
  /** Each clip once, in their order. */
  readonly answers: readonly LoggedAnswer[]
  /** In order of time; not there: none. */
  readonly repeats?: readonly RepeatedAnswer[]
}

/** First answers and repeats in the order in which they were given. */
export function inOrder({ answers, repeats = [] }: SetLog): readonly LoggedAnswer[] {
  const after = (count: number) => repeats.filter((each) => each.after === count)
  return [...after(0), ...answers.flatMap((answer, i) => [answer, ...after(i + 1)])]
}
