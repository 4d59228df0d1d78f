import { type Boosting, boostedTrees, type Tree, treeOdds } from './boostedTrees'
import { classWeights } from './classWeights'
import type { Example } from './example'
import { type LinearOdds, logisticRegression, logOdds } from './logisticRegression'
import { learnScaling, type Scaling, scaled } from './scaling'
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
  how: Learning,
  group: (example: Example) => string,
): (number | null)[] {
  const parts = splitByGroup(examples.map(group), PARTS)
  const odds = new Array<number | null>(examples.length).fill(null)
  for (let part = 0; part < PARTS; part++) {
    const train = examples.filter((_, i) => parts[i] !== part)
    const hasBoth = train.some(({ isLeak }) => isLeak) && train.some(({ isLeak }) => !isLeak)
    if (!hasBoth || train.length === examples.length) continue
    const { scaling, ...fit } = fitExamples(train, how)
    for (const [i, example] of examples.entries()) {
      if (parts[i] === part) odds[i] = fittedOdds(fit, scaled(scaling, example.values))
    }
  }
  return odds
}

/** How to learn: linear odds with this penalty, or boosted trees. */
export type Learning = { readonly kind: 'linear'; readonly penalty: number } | { readonly kind: 'trees' }

/** Chosen by cross-validation on school yards: more trees or deeper ones learn no more. */
const BOOSTING: Boosting = { trees: 200, rate: 0.07, penalty: 3, fewestRows: 15, bins: 32 }

/** What was learnt: linear odds, and trees that add to them. */
export interface Fitted {
  readonly odds: LinearOdds
  readonly trees: readonly Tree[]
}

/** Scales and fits, both classes and all jobs counting alike. */
export function fitExamples(examples: readonly Example[], how: Learning): Fitted & { readonly scaling: Scaling } {
  const scaling = learnScaling(examples.map(({ values }) => values))
  const isLeak = examples.map((example) => example.isLeak)
  const rows = examples.map(({ values }) => scaled(scaling, values))
  const jobs = examples.map(({ job }) => job)
  const learnt = { rows, isLeak, weights: classWeights(isLeak, jobs) }
  if (how.kind === 'linear') return { scaling, odds: logisticRegression(learnt, how.penalty), trees: [] }
  // Both classes count alike, so that the odds are even before any tree.
  const odds = { intercept: 0, weights: new Float64Array(rows[0]!.length) }
  return { scaling, odds, trees: boostedTrees(learnt, odds.intercept, BOOSTING) }
}

/** ln of the odds of a scaled row. */
export function fittedOdds({ odds, trees }: Fitted, row: Float64Array): number {
  return trees.reduce((sum, tree) => sum + treeOdds(tree, row), logOdds(odds, row))
}
