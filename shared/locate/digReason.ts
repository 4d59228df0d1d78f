import type { Reason } from './answer'
import type { DigPiece } from './digOrder'
import { expectedDigCost } from './expectedDigCost'

/**
 * What the order of digging is expected to cost beside "likeliest first".
 *
 * @param pieces In the order advised.
 * @returns Nothing where there is one piece only, or no cost.
 */
export function digReason(pieces: readonly DigPiece[]): Reason[] {
  const expected = expectedDigCost(pieces)
  const likeliest = expectedDigCost([...pieces].sort((a, b) => b.probability - a.probability || a.fromM - b.fromM))
  if (expected === null || likeliest === null || pieces.length < 2) return []
  return [{ key: 'next_dig_order', values: { expected_cost: expected, likeliest_first_cost: likeliest } }]
}
