/**
 * How far two reviewers agree beyond chance on which point is nearest, over several lines.
 *
 *     κ = (p_o − p_e) / (1 − p_e),   p_e = Σ p1[k]·p2[k]
 *
 * @param pairs What the first and the second said of each line; any labels.
 * @returns 1 for perfect agreement, 0 for chance, below 0 for less; `null` for fewer than two lines, or where chance alone
 *   would agree always.
 * @see J. Cohen 1960, "A coefficient of agreement for nominal scales". [Cohen1960]
 * @example cohensKappa([...]) // 0.4 for 20 yes-yes, 5 yes-no, 10 no-yes, 15 no-no
 */
export function cohensKappa(pairs: readonly (readonly [first: string, second: string])[]): number | null {
  if (pairs.length < 2) return null
  const labels = [...new Set(pairs.flat())]
  const share = (said: (pair: readonly [string, string]) => boolean) => pairs.filter(said).length / pairs.length
  const observed = share(([first, second]) => first === second)
  const expected = labels.reduce(
    (sum, label) => sum + share(([first]) => first === label) * share(([, second]) => second === label),
    0,
  )
  return expected === 1 ? null : (observed - expected) / (1 - expected)
}
