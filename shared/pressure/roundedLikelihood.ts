/** Log-likelihood of a rounded reading, as a table for loops that ask for it some million times. */
export interface RoundedLikelihood {
  /** At 0, 1/128, 2/128 ... steps of the gauge from the model. */
  readonly table: Float64Array
  /** The same for any distance, in steps, ≥ 0. */
  readonly beyond: (offSteps: number) => number
}

export const TABLE_PER_STEP = 128
const TABLE_STEPS = 4

/**
 * Log-likelihood of one gauge reading: the needle stood anywhere within half a step of what was read.
 *
 *     log [ Φ((d + ½)/s) − Φ((d − ½)/s) ],   d = |model − reading|
 *
 * @param noiseSteps Standard deviation s of needle and eye, in steps of the gauge, > 0.
 */
export function roundedLikelihood(noiseSteps: number): RoundedLikelihood {
  const table = new Float64Array(TABLE_STEPS * TABLE_PER_STEP + 2)
  for (let i = 0; i < table.length; i++) table[i] = exact(i / TABLE_PER_STEP, noiseSteps)
  return { table, beyond: (offSteps) => exact(offSteps, noiseSteps) }
}

function exact(off: number, s: number): number {
  const near = (off - 0.5) / s
  if (near > 5) return tail(off, s)
  return Math.log(upperTail(near) - upperTail((off + 0.5) / s))
}

/** Far out only the nearer edge counts: log φ(z)/z with its first corrections (Mills's ratio). */
function tail(off: number, s: number): number {
  const z = (off - 0.5) / s
  if (z <= 5) return Math.log(Math.max(upperTail(z) - upperTail((off + 0.5) / s), Number.MIN_VALUE))
  return -0.5 * z * z - Math.log(z * Math.sqrt(2 * Math.PI)) + Math.log1p(-1 / (z * z) + 3 / z ** 4)
}

/**
 * 1 − Φ(z), relative error below 1.3e-7.
 *
 * @see Press et al. 1992, Numerical Recipes, erfcc (from memory; checked in the tests against R). [PressEtAl1992]
 */
export function upperTail(z: number): number {
  const x = Math.abs(z) / Math.SQRT2
  const t = 1 / (1 + 0.5 * x)
  const c = [
    0.17087277, -0.82215223, 1.48851587, -1.13520398, 0.27886807, -0.18628806, 0.09678418, 0.37409196, 1.00002368,
    -1.26551223,
  ]
  const half = 0.5 * t * Math.exp(-x * x + c.reduce((sum, k) => sum * t + k, 0))
  return z >= 0 ? half : 1 - half
}
