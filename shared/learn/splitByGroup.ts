import { InputError } from '../base/errors'
import { Random } from '../base/random'

/**
 * Divides clips into parts so that no group (job, device) stands in two of them, the parts as even in size as that allows.
 *
 * @param groups The group of each clip. @param parts 2 or more; no more than there are groups are made.
 * @returns For each clip the number of its part, from 0. The same groups give the same parts, whatever their order.
 * @throws {InputError} fewer than two groups.
 */
export function splitByGroup(groups: readonly string[], parts: number, seed = 'split'): number[] {
  const sizes = new Map<string, number>()
  for (const group of groups) sizes.set(group, (sizes.get(group) ?? 0) + 1)
  if (sizes.size < 2) throw new InputError(`${sizes.size} group; at least two are needed to keep one back`)
  const random = new Random(seed)
  const shuffled = random.shuffled([...sizes.keys()].sort())
  const order = shuffled.sort((a, b) => sizes.get(b)! - sizes.get(a)!)
  const filled = new Array<number>(Math.min(parts, sizes.size)).fill(0)
  const partOf = new Map<string, number>()
  for (const group of order) {
    const part = filled.indexOf(Math.min(...filled))
    filled[part]! += sizes.get(group)!
    partOf.set(group, part)
  }
  return groups.map((group) => partOf.get(group)!)
}
