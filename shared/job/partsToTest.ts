import { sideOrder } from '../pressure/sideOrder'
import type { MendPart } from './mend'
import { partProof } from './partProof'
import type { PressureTest } from './pressureTests'

/** Where the leak may be, as the answer has it: expected number of leaks a metre. */
export interface LeakDensity {
  readonly alongM: readonly number[]
  readonly perM: readonly number[]
}

/**
 * The parts that still have to be tested, the one first that proves most.
 *
 * A part that holds is done. The chance that a part leaks comes from the answer's density; without an answer every metre
 * is as likely as another.
 *
 * @param density `null` without an answer.
 * @returns Ids.
 */
export function partsToTest(
  parts: readonly MendPart[],
  tests: readonly PressureTest[],
  density: LeakDensity | null,
): string[] {
  const left = parts.filter((part) => partProof(part, tests).state !== 'holds')
  if (left.length === 0) return []
  const wholeM = parts.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0)
  const chances = left.map((part) => ({
    name: part.name,
    lengthM: part.toM - part.fromM,
    leakChance: density === null ? (part.toM - part.fromM) / Math.max(wholeM, 1e-9) : leaksWithin(part, density),
  }))
  return sideOrder(chances, false).order.map((i) => left[i]!.id)
}

/** At least one leak within, taking their number for Poisson's. */
function leaksWithin({ fromM, toM }: MendPart, { alongM, perM }: LeakDensity): number {
  let expected = 0
  for (let i = 1; i < alongM.length; i++) {
    const middleM = (alongM[i - 1]! + alongM[i]!) / 2
    if (middleM < fromM || middleM > toM) continue
    expected += ((perM[i - 1]! + perM[i]!) / 2) * (alongM[i]! - alongM[i - 1]!)
  }
  return 1 - Math.exp(-Math.max(0, expected))
}
