import { InputError } from '../base/errors'

const METRES_PER_INCH = 0.0254

/** Inside of a pipe and its wall, m. */
export interface PipeSize {
  readonly insideDiameterM: number
  readonly wallM: number
}

/**
 * Inside diameter and least wall of PVC Schedule 40, inches, by nominal size.
 *
 * 1, 1-1/2 and 2 as a public page of pipe data has them after ASTM D1785; the others from memory. [ASTMD1785]
 */
const SCHEDULE_40_IN: Readonly<Record<string, readonly [number, number]>> = {
  '0.75': [0.804, 0.113],
  '1': [1.033, 0.133],
  '1.25': [1.36, 0.14],
  '1.5': [1.592, 0.145],
  '2': [2.049, 0.154],
  '2.5': [2.445, 0.203],
  '3': [3.042, 0.216],
}

/** Nominal sizes whose dimensions are known here, inches. */
export const KNOWN_SIZES_IN: readonly number[] = Object.keys(SCHEDULE_40_IN).map(Number)

/**
 * Dimensions of PVC Schedule 40.
 *
 * @param nominalIn Nominal size in inches as the trade names it.
 * @returns `null` for a size that is not listed.
 * @throws {InputError} a size that is not above 0.
 * @see [ASTMD1785] in shared/base/sources.ts
 */
export function pipeSize(nominalIn: number): PipeSize | null {
  if (!(nominalIn > 0)) throw new InputError(`nominalIn is ${nominalIn}; must be > 0`)
  const inches = SCHEDULE_40_IN[String(nominalIn)]
  if (inches === undefined) return null
  return { insideDiameterM: inches[0] * METRES_PER_INCH, wallM: inches[1] * METRES_PER_INCH }
}
