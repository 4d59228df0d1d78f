/**
 * The counts of successes that are to be expected: the least range, cut evenly at both sides, that holds so much of a
 * binomial distribution.
 *
 * @param trials Whole, ≥ 0. @param chance Of each, 0 to 1. @param mass Less than 1.
 */
export function binomialRange(trials: number, chance: number, mass: number): readonly [number, number] {
  const cut = (1 - mass) / 2
  const tail = (p: number) => {
    let count = 0
    let sum = oddsOf(0, trials, p)
    while (sum <= cut && count < trials) sum += oddsOf(++count, trials, p)
    return count
  }
  return [tail(chance), trials - tail(1 - chance)]
}

/** Chance of just so many successes: n!/(k!(n−k)!)·pᵏ·(1−p)ⁿ⁻ᵏ. */
function oddsOf(count: number, trials: number, chance: number): number {
  let odds = 1
  for (let i = 1; i <= count; i++) odds *= ((trials - count + i) / i) * chance
  return odds * (1 - chance) ** (trials - count)
}
