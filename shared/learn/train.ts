import { calibrate, calibrated } from './calibration'
import { checkExamples } from './checkExamples'
import { crossValidate, fitExamples, type Learning } from './crossValidate'
import { DETECTOR_FEATURES } from './detectorFeatures'
import { usualDistance } from './distance'
import { evaluate } from './evaluate'
import type { Example } from './example'
import { probabilityOf } from './logisticRegression'
import { type DetectorModel, type Evaluation, HEARD_DIGITS, type ModelCard } from './model'

/** What the trainer tells beside the clips. */
export interface TrainingOrder {
  readonly name: string
  readonly data: string
  readonly trainedAt: string
  readonly programVersion: string
  /** Share of the leaks that may be missed, 0 to 1. */
  readonly missShare: number
  readonly limits: readonly string[]
}

/** Penalties tried; cross-validation by job picks one. Chosen: from nearly free to nearly held. */
const PENALTIES = [0.1, 1, 10, 100]
/** A stronger penalty is kept when its cost a clip is no worse than the best by more than this. Chosen. */
const AS_GOOD = 0.002
/** Trees are tried from so many clips on. Chosen: fewer cannot tell whether they earn their place. */
const FEWEST_FOR_TREES = 500

/**
 * Trains a detector: its kind and penalty by cross-validation by job, odds calibrated on the same, the whole set for the weights.
 *
 * @throws {InputError} as `checkExamples`.
 */
export function train(given: readonly Example[], order: TrainingOrder): DetectorModel {
  const examples = checkExamples(given)
  const how = chooseLearning(examples)
  const byJob = scoredApart(examples, how, ({ job }) => job)
  const calibration = calibrate(
    byJob.map(({ odds }) => odds),
    byJob.map(({ example }) => example.isLeak),
  )
  const evaluation = (scored: readonly Apart[], keptApart: Evaluation['keptApart']) =>
    evaluate(
      scored.map(({ example, odds }) => ({ example, probability: calibrated(calibration, odds) })),
      keptApart,
      { missShare: order.missShare },
    )
  const { scaling, odds, trees } = fitExamples(examples, how)
  const first = evaluation(byJob, 'job')
  const byDevice = devicesOf(examples).length < 2 ? [] : scoredApart(examples, how, ({ device }) => device)
  return {
    features: DETECTOR_FEATURES.map(({ id }) => id),
    scaling,
    odds,
    trees,
    calibration,
    threshold: first.atMiss.threshold,
    usualDistance: usualDistance(
      scaling,
      examples.map(({ values }) => values),
    ),
    penalty: how.kind === 'linear' ? how.penalty : null,
    heard: examples.map(({ sha256 }) => sha256.slice(0, HEARD_DIGITS)),
    card: card(examples, order),
    evaluations: hasBoth(byDevice) ? [first, evaluation(byDevice, 'device')] : [first],
  }
}

interface Apart {
  readonly example: Example
  /** ln of the odds by a detector that never heard the clip's group. */
  readonly odds: number
}

function scoredApart(examples: readonly Example[], how: Learning, group: (example: Example) => string): Apart[] {
  return crossValidate(examples, how, group).flatMap((odds, i) =>
    odds === null ? [] : [{ example: examples[i]!, odds }],
  )
}

/** The stiffest linear detector that is as good as any, or trees where there is enough to learn from and they are better. */
function chooseLearning(examples: readonly Example[]): Learning {
  const costOf = (how: Learning) => logCost(scoredApart(examples, how, ({ job }) => job))
  const linear = PENALTIES.map((penalty) => ({ kind: 'linear', penalty }) as const)
  const costs = linear.map((how) => ({ how, cost: costOf(how) }))
  const least = Math.min(...costs.map(({ cost }) => cost))
  const trees = { kind: 'trees' } as const
  if (examples.length >= FEWEST_FOR_TREES && costOf(trees) < least - AS_GOOD) return trees
  return costs.filter(({ cost }) => cost <= least + AS_GOOD).at(-1)!.how
}

function logCost(scored: readonly Apart[]): number {
  const costs = scored.map(
    ({ example, odds }) => -Math.log(Math.max(1e-12, probabilityOf(example.isLeak ? odds : -odds))),
  )
  return costs.reduce((sum, cost) => sum + cost, 0) / Math.max(1, costs.length)
}

function hasBoth(scored: readonly Apart[]): boolean {
  return scored.some(({ example }) => example.isLeak) && scored.some(({ example }) => !example.isLeak)
}

function devicesOf(examples: readonly Example[]): string[] {
  return [...new Set(examples.map(({ device }) => device))].sort()
}

function card(examples: readonly Example[], order: TrainingOrder): ModelCard {
  return {
    name: order.name,
    data: order.data,
    trainedAt: order.trainedAt,
    programVersion: order.programVersion,
    leaks: examples.filter(({ isLeak }) => isLeak).length,
    others: examples.filter(({ isLeak }) => !isLeak).length,
    jobs: new Set(examples.map(({ job }) => job)).size,
    devices: devicesOf(examples).filter((device) => device !== ''),
    covers: [...new Set(examples.map(({ cover }) => cover))].filter((cover) => cover !== '').sort(),
    limits: order.limits,
  }
}
