import { median } from '../base/statistics'
import { countedAnswers, type PracticeAnswer } from './answers'
import { type Drill, GUESS } from './drills/question'
import { type MedianInterval, medianInterval } from './score/medianInterval'
import { type Sensitivity, sensitivity } from './score/sensitivity'
import { type ShareInterval, wilsonInterval } from './score/wilsonInterval'
import { type Threshold, threshold } from './staircase/threshold'

/** So many answers make one step of the progress over time, and so many the present threshold. Chosen. */
export const BLOCK_ANSWERS = 20
export const THRESHOLD_ANSWERS = 60

/** Figures of one listener, person or machine, on the same questions. */
export interface Figures {
  readonly count: number
  readonly right: number
  readonly rightShare: ShareInterval & { readonly share: number }
  /** Of leak or not only, and only where both kinds were asked. */
  readonly sensitivity: Sensitivity | null
  /** Of placing only. */
  readonly errorSpacings: MedianInterval | null
}

export interface ProgressBlock {
  /** Of the first answer, s since 1970. */
  readonly fromS: number
  /** Median level of its questions, dB: what the sensitivity was reached at; `null` where nobody knows it. */
  readonly levelDb: number | null
  readonly person: Figures
  readonly machine: Figures | null
  /** Of several kinds told apart: both on the one question that the machine answers, bubbling or not. */
  readonly alike: { readonly person: Figures; readonly machine: Figures } | null
}

export interface Progress {
  readonly blocks: readonly ProgressBlock[]
  readonly whole: Pick<ProgressBlock, 'person' | 'machine' | 'alike'> | null
  /** Smallest signal that is heard, of the last answers; `null`: too few. */
  readonly threshold: Threshold | null
}

/** How a drill goes over time. Repeats do not count: who was told the answer knows it. */
export function progress(answers: readonly PracticeAnswer[], drill: Drill): Progress {
  const counted = countedAnswers(answers, drill)
  const blocks: ProgressBlock[] = []
  for (let from = 0; from < counted.length; from += BLOCK_ANSWERS) {
    const block = counted.slice(from, from + BLOCK_ANSWERS)
    const levels = block.map(({ order }) => order.levelDb).filter(Number.isFinite)
    const levelDb = levels.length === 0 ? null : median(levels)
    blocks.push({ fromS: block[0]!.timeS, levelDb, ...bothFigures(block, drill) })
  }
  const levelled = counted.filter(({ order }) => Number.isFinite(order.levelDb))
  const trials = levelled.slice(-THRESHOLD_ANSWERS).map(({ order, right }) => ({ levelDb: order.levelDb, right }))
  return {
    blocks,
    whole: counted.length === 0 ? null : bothFigures(counted, drill),
    threshold: threshold(trials, GUESS[drill]),
  }
}

function bothFigures(answers: readonly PracticeAnswer[], drill: Drill): NonNullable<Progress['whole']> {
  const judged = answers.flatMap(({ truth, machine }) => (machine === null ? [] : [{ ...machine, truth }]))
  const person = figures(answers)
  if (judged.length === 0) return { person, machine: null, alike: null }
  // The machine is asked less than the person where it tells one kind from all others.
  if (drill === 'what')
    return { person, machine: null, alike: { person: figures(yesNo(answers)), machine: figures(judged) } }
  return { person, machine: figures(judged), alike: null }
}

/** Answers of several kinds as answers to one question: bubbling or not; of clips that the machine judged as well. */
function yesNo(answers: readonly PracticeAnswer[]): Judged[] {
  return answers
    .filter(({ machine }) => machine !== null)
    .map(({ truth, said }) => ({
      truth,
      said,
      right: (said === 'bubbling') === (truth === 'bubbling'),
      errorSpacings: null,
    }))
}

interface Judged {
  readonly truth: string
  readonly said: string
  readonly right: boolean
  readonly errorSpacings: number | null
}

/** @param answers At least one. */
export function figures(answers: readonly Judged[]): Figures {
  const right = answers.filter((answer) => answer.right).length
  const errors = answers.flatMap(({ errorSpacings }) => errorSpacings ?? [])
  return {
    count: answers.length,
    right,
    rightShare: { share: right / answers.length, ...wilsonInterval(right, answers.length) },
    sensitivity: yesNoSensitivity(answers),
    errorSpacings: errors.length === 0 ? null : medianInterval(errors),
  }
}

function yesNoSensitivity(answers: readonly Judged[]): Sensitivity | null {
  const of = (truth: string) => answers.filter((answer) => answer.truth === truth)
  const [leaks, others] = [of('leak'), of('no leak')]
  if (leaks.length === 0 || others.length === 0) return null
  const hits = leaks.filter(({ right }) => right).length
  const correctRejections = others.filter(({ right }) => right).length
  return sensitivity({
    hits,
    misses: leaks.length - hits,
    falseAlarms: others.length - correctRejections,
    correctRejections,
  })
}
