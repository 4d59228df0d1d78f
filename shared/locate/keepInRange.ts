/** Least and most of the numbers that stand first in `ShapeLayout`. Chosen: where the ground's law makes sense. */
const LIMITS = [
  [0.2, 3], // spreading
  [Math.log(0.2), Math.log(300)], // ln absorption
  [-60, 10], // level along the pipe
  [Math.log(0.3), Math.log(60)], // ln loss along the pipe
  [-1.5, 1.5], // ln depth ratio
  [-0.6, 0.6], // spreading's tilt
  [-0.3, 0.3], // spreading's curve
  [0, 8], // loss along the pipe whatever the frequency
  [-0.2, 1.2], // coupling of the floor
  [-30, 6], // level along a slab
  [Math.log(0.1), Math.log(20)], // ln loss along a slab
  [-1, 1.5], // spreading of sources at the surface
  [-1.5, 1.5], // their ln absorption
  [-20, 20], // their level along the pipe
] as const

/** Keeps the ground where its law makes sense; the prior does the rest. Changes `shared`. */
export function keepInRange(shared: Float64Array): void {
  for (const [i, [low, high]] of LIMITS.entries()) shared[i] = Math.min(high, Math.max(low, shared[i]!))
}
