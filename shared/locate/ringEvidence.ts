import { logSumExp } from '../base/statistics'
import type { SettingDown } from './settingDown'

/** Rings a second that no bubble made, with prior weights: knocks, voices, chance. Chosen; mostly well under one. */
const FALSE_RATES = [
  { perS: 0.1, weight: 0.35 },
  { perS: 0.3, weight: 0.35 },
  { perS: 1, weight: 0.2 },
  { perS: 3, weight: 0.1 },
]
/** Rings a second right at a leak: from a slow bubble train to a rush (formation runs to some 50 a second). Chosen. */
const LEAK_RATES_PER_S = [1, 2.5, 6, 15, 35]
/** Signal over floor in the best band where half of the rings are heard, dB, and how gently that turns. Chosen. */
const HALF_HEARD_DB = [2, 7, 12, 18]
const TURN_DB = 3
/** Shape of the negative binomial: slugs and swells make counts wander far more than chance alone. Chosen. */
const DISPERSION = 1.5
/** Share of clips whose rings have another cause altogether, and the rates they may show: mostly few. Chosen. */
const ODD_SHARE = 0.005
/** The same where air passes below on its way from the inlet to the leak. Chosen. */
const PASSED_SHARE = 0.1
const ODD_RATES = [
  { perS: 0.5, weight: 0.5 },
  { perS: 1.5, weight: 0.3 },
  { perS: 5, weight: 0.15 },
  { perS: 20, weight: 0.05 },
]

/**
 * How well the ring counts fit a leak that stands so far over the floor at each setting-down.
 *
 * Rings are counted, so they speak by how many there are: near the leak a leak's rate, fading with the signal over
 * the floor to the rate of false rings. Leak rate, false rate and audibility are summed over, not fitted; one clip in
 * two hundred may have rings of another cause altogether, one in ten where air passes.
 *
 * @param settings    Those without rings are passed over.
 * @param overFloorDb Of each leak, modelled signal over floor in its best band for each, dB; none: no leak anywhere.
 * @param passedBy    Whether air passes below each on its way to the leak: then rings there say little.
 * @returns ln of the likelihood, comparable between places and numbers of leaks.
 */
export function logRingLikelihood(
  settings: readonly SettingDown[],
  overFloorDb: readonly Float64Array[],
  passedBy: readonly boolean[] = [],
): number {
  const heard = settings.flatMap(({ rings }, k) =>
    rings === null
      ? []
      : [
          {
            rings,
            over: overFloorDb.map((leak) => leak[k]!),
            oddShare: passedBy[k] ? PASSED_SHARE : ODD_SHARE,
          },
        ],
  )
  if (heard.length === 0) return 0
  const odd = heard.map(({ rings }) => logOdd(rings))
  const logOf = (rateOf: (i: number) => number) =>
    heard.reduce((sum, { rings, oddShare }, i) => sum + logMixed(logCount(rings, rateOf(i)), odd[i]!, oddShare), 0)

  const rates = rateChoices(overFloorDb.length)
  const terms: number[] = []
  for (const { perS, weight } of FALSE_RATES) {
    for (const half of overFloorDb.length === 0 ? [0] : HALF_HEARD_DB) {
      const shares = heard.map(({ over }) => over.map((db) => 1 / (1 + Math.exp((half - db) / TURN_DB))))
      for (const leakRates of rates) {
        terms.push(
          Math.log(weight) + logOf((i) => leakRates.reduce((sum, rate, j) => sum + rate * shares[i]![j]!, perS)),
        )
      }
    }
  }
  return logSumExp(terms) - Math.log(rates.length * (overFloorDb.length === 0 ? 1 : HALF_HEARD_DB.length))
}

/** Every choice of one rate a leak. */
function rateChoices(leaks: number): number[][] {
  if (leaks === 0) return [[]]
  return rateChoices(leaks - 1).flatMap((others) => LEAK_RATES_PER_S.map((rate) => [...others, rate]))
}

function logMixed(logExpected: number, logOther: number, oddShare: number): number {
  const a = Math.log(1 - oddShare) + logExpected
  const b = Math.log(oddShare) + logOther
  const top = Math.max(a, b)
  return top + Math.log(Math.exp(a - top) + Math.exp(b - top))
}

function logOdd(rings: { ratePerS: number; listenedS: number }): number {
  return logSumExp(ODD_RATES.map(({ perS, weight }) => Math.log(weight) + logCount(rings, perS)))
}

/** Negative binomial of a count with mean rate·seconds, the count rounded from the rate heard. */
function logCount({ ratePerS, listenedS }: { ratePerS: number; listenedS: number }, expectedPerS: number): number {
  const count = Math.round(ratePerS * listenedS)
  const mean = expectedPerS * listenedS
  const p = DISPERSION / (DISPERSION + mean)
  return logRising(count) + DISPERSION * Math.log(p) + count * Math.log1p(-p)
}

/** ln of Γ(count + r)/(Γ(r)·count!), built up once. */
const RISING = [0]
function logRising(count: number): number {
  for (let n = RISING.length; n <= count; n++) RISING.push(RISING[n - 1]! + Math.log((DISPERSION + n - 1) / n))
  return RISING[count]!
}
