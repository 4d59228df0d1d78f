import type { PracticeAnswer } from '../answers'
import type { PracticeSet, SetAnswer, SetDrill } from './practiceSet'
import type { SetLog } from './setLog'

/** A set with what was answered to it, and what the machine said of the same clips. */
export interface AnsweredSet {
  readonly set: PracticeSet
  readonly log: SetLog
  readonly machine: readonly SetAnswer[]
}

/** The machine tells bubbling from everything else, and nothing finer. */
export function machineTruth(drill: SetDrill, label: string): string {
  return drill === 'leak' || label === 'bubbling' ? label : 'something else'
}

/**
 * Answers to clips of sets as answers of a practice, in order of time; of clips that were not invented here, or of all.
 * What an older version kept without its time comes first.
 *
 * @param invented Which clips: those of somebody's invention, or those that were recorded.
 */
export function setAnswers(
  sets: readonly AnsweredSet[],
  drill: SetDrill,
  invented: boolean,
): readonly PracticeAnswer[] {
  const all = sets
    .filter(({ set }) => set.drill === drill)
    .flatMap(({ set, log, machine }) =>
      log.answers.flatMap(({ clip, said, timeS = 0, levelDb = null }): PracticeAnswer[] => {
        const entry = set.clips[clip]
        if (entry === undefined || entry.invented !== invented) return []
        const theirs = machine.find((each) => each.clip === clip)
        const right = theirs?.said === machineTruth(drill, entry.label)
        return [
          {
            timeS,
            order: { drill, seed: `set/${set.id}/${clip}`, levelDb: levelDb ?? Number.NaN },
            truth: entry.label,
            said,
            right: said === entry.label,
            errorSpacings: null,
            machine: theirs === undefined ? null : { said: theirs.said, right, bubbling: null, errorSpacings: null },
            isRepeat: false,
          },
        ]
      }),
    )
  return all.sort((a, b) => a.timeS - b.timeS)
}
