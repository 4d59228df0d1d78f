/** A moment that is no exception however loud it is: the ring of a bubble. */
export interface Vouched {
  readonly timeS: number
  readonly pitchHz: number
  /** Time to fall to 1/e, s. */
  readonly decayS: number
}

/** Decays that a ring lasts for: its power is 17 dB down then. */
const DECAYS_LASTED = 2
/** A ring's energy reaches into the neighbouring bands. */
const REACH = 2 ** (1 / 2)

/**
 * Frames of a band that vouched moments reach into.
 *
 * @param frames How many, from one to the next and how long each, s.
 * @returns 1 for each such frame; `null` when there is none.
 */
export function vouchedFrames(
  midHz: number,
  frames: { readonly count: number; readonly hopS: number; readonly frameS: number },
  vouched: readonly Vouched[],
): Uint8Array | null {
  const near = vouched.filter(({ pitchHz }) => pitchHz < midHz * REACH && midHz < pitchHz * REACH)
  if (near.length === 0 || !(frames.hopS > 0)) return null
  const kept = new Uint8Array(frames.count)
  for (const { timeS, decayS } of near) {
    const first = Math.max(0, Math.ceil((timeS - frames.frameS) / frames.hopS))
    const last = Math.min(frames.count - 1, Math.floor((timeS + DECAYS_LASTED * decayS) / frames.hopS))
    for (let i = first; i <= last; i++) kept[i] = 1
  }
  return kept
}
