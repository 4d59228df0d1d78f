/** Excess over the resting level that is taken back, as a share of its decibels. Chosen. */
const TAKEN_BACK = 0.5
/** Time the gain needs to come back up, s: 1 to 10 s are usual for automatic gain (from memory). */
const RECOVERY_S = 2

/**
 * Gain of a recorder that rides it: down at once when a frame is loud, back up slowly.
 *
 * @param framePower Mean square of each frame. @param restingPower Level at which it leaves the gain alone.
 * @returns Power gain of each frame, at most 1.
 */
export function ridingGain(framePower: Float64Array, restingPower: number, frameS: number): Float64Array {
  const forget = Math.exp(-frameS / RECOVERY_S)
  let held = restingPower
  return framePower.map((power) => {
    held = Math.max(power, held * forget, restingPower)
    return (held / restingPower) ** -TAKEN_BACK
  })
}
