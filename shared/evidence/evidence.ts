import type { Problem } from '../base/problem'
import type { Ring, RingSummary } from '../bubbles/ring'

/** Levels of one exact one-third-octave band; `null` where the clip cannot say. */
export interface BandEvidence {
  /** Exact mid-band frequency, Hz (1000·10^(x/10)). */
  readonly midHz: number
  /** Mean level over the clip, dBFS (a mean square of 1 reads 0). */
  readonly levelDbFs: number | null
  /** Level of the quiet frames: lower quantile, corrected so that steady noise reads its mean. */
  readonly quietDbFs: number | null
  /** Level of the busy frames: upper quantile, corrected the same way. */
  readonly busyDbFs: number | null
  /**
   * Mean level with the loudest moments left out, corrected the same way, dBFS: one footstep does not move it and a
   * gurgle that fills a quarter of the clip still does. What the locator weighs.
   */
  readonly steadyDbFs: number | null
}

/** What one clip says. */
export interface ClipEvidence {
  readonly durationS: number
  readonly sampleRateHz: number
  readonly channels: number
  readonly bands: readonly BandEvidence[]
  readonly rings: RingSummary
  /** Every ring, in order of time. */
  readonly ringList: readonly Ring[]
  /** 0 (nothing bubbles) to 1 (it surely does). */
  readonly bubbling: number
  /** Reader's and quality's problems; any `spoilt` one sets the clip aside. */
  readonly problems: readonly Problem[]
}
