import { InputError } from '../../base/errors'
import { normalQuantile } from '../../base/statistics'

/** From–to, shares of 0 to 1. */
export interface ShareInterval {
  readonly low: number
  readonly high: number
}

/**
 * Where a share lies that was seen in so many of so many, by Wilson's score.
 *
 *     (p̂ + z²/2n ± z·√(p̂(1−p̂)/n + z²/4n²)) / (1 + z²/n)
 *
 * Unlike the plain interval it never leaves 0 to 1, and says something even of none or all.
 *
 * @param count 0 to `total`. @param total > 0. @param confidence Between 0 and 1, both excluded.
 * @throws {InputError} otherwise.
 * @see Wilson 1927 [Wilson1927]; worked values in Newcombe 1998, method 3 [Newcombe1998].
 * @example wilsonInterval(0, 20) // { low: 0, high: 0.1611 }
 */
export function wilsonInterval(count: number, total: number, confidence = 0.95): ShareInterval {
  if (!(total > 0)) throw new InputError(`total is ${total}; must be > 0`)
  if (!(count >= 0 && count <= total)) throw new InputError(`count is ${count}; must be 0 to ${total}`)
  const z = normalQuantile((1 + confidence) / 2)
  const share = count / total
  const middle = share + (z * z) / (2 * total)
  const half = z * Math.sqrt((share * (1 - share)) / total + (z * z) / (4 * total * total))
  const whole = 1 + (z * z) / total
  return { low: Math.max(0, (middle - half) / whole), high: Math.min(1, (middle + half) / whole) }
}
