/** A device's two clocks at one moment: the one that can be set, s since 1970, and the one that only runs on, s. */
export interface TwoClocks {
  readonly wallS: number
  readonly runningS: number
}

export interface SteadyTime {
  /** Now, s since 1970; never before an earlier one. */
  readonly timeS: number
  /** By how much the device's clock was set back since, s; 0 while it was not. */
  readonly setBackS: number
  /** What to count from the next time. */
  readonly start: TwoClocks
}

/** Clocks drift and are corrected by this much, s; more means that somebody set it. Chosen. */
const AGREES_S = 30

/**
 * The time of a clip although the device's clock may be set meanwhile, by the network or by hand. The drift of the
 * source is told by these times, so their order must not turn round: when the clock is set back, time is counted on.
 * A clock that is ahead is believed: the running one stands still while a phone sleeps.
 *
 * @param start The clocks at the start, or what the last call gave.
 */
export function steadyTime(start: TwoClocks, now: TwoClocks): SteadyTime {
  const countedS = start.wallS + (now.runningS - start.runningS)
  const setBackS = countedS - now.wallS
  if (setBackS > AGREES_S) return { timeS: countedS, setBackS, start }
  const timeS = Math.max(countedS, now.wallS)
  return { timeS, setBackS: 0, start: { wallS: timeS, runningS: now.runningS } }
}
