import type { Line } from '../line/line'
import type { LocateAnswer } from '../locate/answer'

/** Levels of a point by band, over all its usable clips. */
export interface PointSpectrum {
  readonly point: number
  /** Exact mid-band frequencies, Hz. */
  readonly midHz: readonly number[]
  /** With the air on, dBFS; `null` where no clip can say. */
  readonly onDbFs: readonly (number | null)[]
  /** With the air off. */
  readonly offDbFs: readonly (number | null)[]
}

/** Which bytes a clip was, at the time. */
export interface ClipDigest {
  readonly file: string
  readonly sha256: string | null
}

/**
 * The answer as it stood when the job was closed, with all that it came from: line, clips by their digests, version. It is
 * never worked out anew; the report of a closed job is made from it.
 */
export interface KeptAnswer {
  /** Seconds since 1970-01-01 UTC. */
  readonly timeS: number
  readonly version: string
  readonly answer: LocateAnswer
  /** The line as it was told then. */
  readonly line: Line
  readonly spectra: readonly PointSpectrum[]
  /** In the order of the sweeps. */
  readonly clips: readonly ClipDigest[]
}

export const MOST_DENSITY = 200_000
