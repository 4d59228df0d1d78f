import { METRES_PER_FOOT } from '../base/units'

const METRE_STEPS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10]
const INCH_STEPS = [0.5, 1, 2, 6, 12, 24, 60, 120]

/** Finer than this no finger sets anything, px. Chosen. */
const FINEST_PX = 3

/**
 * What lengths are rounded to while a finger draws: a round number in the reader's unit, and not finer than a finger is
 * at this scale. Finer ones are typed.
 *
 * @param pxPerM Scale of the picture, > 0.
 * @returns m.
 */
export function dragStepM(pxPerM: number, unit: 'm' | 'ft'): number {
  const steps = unit === 'm' ? METRE_STEPS : INCH_STEPS.map((inches) => (inches / 12) * METRES_PER_FOOT)
  return steps.find((stepM) => stepM * pxPerM >= FINEST_PX) ?? steps.at(-1)!
}
