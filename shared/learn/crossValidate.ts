import { classWeights } from './classWeights'
import type { Example } from './example'
import { logisticRegression, logOdds } from './logisticRegression'
import { learnScaling, scaled } from './scaling'
import { splitByGroup } from './splitByGroup'

/** Parts that clips are divided into: each is scored by a detector that learnt from the others. Chosen. */
const PARTS = 5

/**
 * ln of the odds of every clip by a detector that never heard anything of the clip's group.
 *
 * A part whose training side lacks one class cannot be scored.
 *
 * @param group What must not stand on both sides: the job, or, harder, the device.
 * @returns One a clip; `null` where it could not be scored.
 */
export function crossValidate(
  examples: readonly Example[],
  penalty: number,
  group: (example: Example) => string,
): (number | null)[] {
  const parts = splitByGroup(examples.map(group), PARTS)
  const odds = new Array<number | null>(examples.length).fill(null)
  for (let part = 0; part < PARTS; part++) {
    const train = examples.filter((_, i) => parts[i] !== part)
    const hasBoth = train.some(({ isLeak }) => isLeak) && train.some(({ isLeak }) => !isLeak)
    if (!hasBoth || train.length === examples.length) continue
    const { scaling, fit } = fitExamples(train, penalty)
    for (const [i, example] of examples.entries()) {
      if (parts[i] === part) odds[i] = logOdds(fit, scaled(scaling, example.values))
    }
  }
  return odds
}

/** Scales and fits, both classes and all jobs counting alike. */
export function fitExamples(examples: readonly Example[], penalty: number) {
  const scaling = learnScaling(examples.map(({ values }) => values))
  const isLeak = examples.map((example) => example.isLeak)
  const fit = logisticRegression(
    {
      rows: examples.map(({ values }) => scaled(scaling, values)),
      isLeak,
      weights: classWeights(
        isLeak,
        examples.map(({ job }) => job),
      ),
    },
    penalty,
  )
  return { scaling, fit }
}
