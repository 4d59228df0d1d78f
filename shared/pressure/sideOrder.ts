import { InputError } from '../base/errors'

/** A part of the line that can be shut off and tested by itself. */
export interface LinePart {
  readonly name: string
  readonly lengthM: number
  /** The chance that it leaks, before any test of it, 0 to 1. */
  readonly leakChance: number
}

export interface SideOrder {
  /** Places in the list of parts, the first to test first. */
  readonly order: readonly number[]
  /** Tests until it is known of every part whether it holds, on average. */
  readonly expectedTests: number
}

/**
 * The order of side tests that proves most with least.
 *
 * A part that holds is done. With the line known to leak somewhere, the last part needs no test when all the others hold: it
 * must be the one. That saves most when the part most likely to leak comes last:
 *
 *     E = n − P(all but the last hold | at least one leaks)
 *
 * Among the others those come first that prove most length, (1 − chance) · length. Without a known leak every part
 * needs its test, and the same rule orders all of them.
 *
 * @param parts     At least one. Chances are taken for independent of each other.
 * @param knownLeak That the whole of them leaks is known: it dropped, with every fitting tight.
 * @throws {InputError} no parts; a chance outside 0 to 1; a negative length; a known leak where every chance is 0.
 * @example sideOrder([{ name: 'A', lengthM: 5, leakChance: 0.7 }, { name: 'B', lengthM: 5, leakChance: 0.2 }], true).order // [1, 0]
 */
export function sideOrder(parts: readonly LinePart[], knownLeak: boolean): SideOrder {
  if (parts.length === 0) throw new InputError('there are no parts to test')
  for (const { name, leakChance, lengthM } of parts) {
    if (!(leakChance >= 0 && leakChance <= 1))
      throw new InputError(`${name}: leakChance is ${leakChance}; must be 0 to 1`)
    if (!(lengthM >= 0)) throw new InputError(`${name}: lengthM is ${lengthM}; must be 0 or more`)
  }
  const proves = ({ leakChance, lengthM }: LinePart) => (1 - leakChance) * lengthM
  const order = parts.map((_, i) => i).sort((a, b) => proves(parts[b]!) - proves(parts[a]!) || a - b)
  if (!knownLeak) return { order, expectedTests: parts.length }
  const allHold = parts.reduce((chance, { leakChance }) => chance * (1 - leakChance), 1)
  if (allHold === 1) throw new InputError('a leak is known, but no part can leak; tell their chances')
  const last = parts.reduce((most, part, i) => (part.leakChance > parts[most]!.leakChance ? i : most), 0)
  const othersHold = parts.reduce((chance, { leakChance }, i) => (i === last ? chance : chance * (1 - leakChance)), 1)
  const saved = (othersHold * parts[last]!.leakChance) / (1 - allHold)
  return { order: [...order.filter((i) => i !== last), last], expectedTests: parts.length - saved }
}
