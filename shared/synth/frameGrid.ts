import { EVIDENCE_BANDS } from './grid'

/** Neighbouring bands whose power is taken from frames of one length, as the evidence takes them. */
interface FrameGroup {
  /** First band, and the one after the last. */
  readonly from: number
  readonly to: number
  readonly frameS: number
  /** Whether quiet and busy levels are told. */
  readonly tellsQuiet: boolean
}

/** The frames of the evidence: 0.34 s for 63 to 125 Hz, 0.125 s for 160 to 400 Hz, 85 ms from 500 Hz on. */
export const FRAME_GROUPS: readonly FrameGroup[] = [
  { from: 0, to: 4, frameS: 1024 / 3000, tellsQuiet: false },
  { from: 4, to: 9, frameS: 0.125, tellsQuiet: true },
  { from: 9, to: 21, frameS: 256 / 3000, tellsQuiet: true },
]

/** Hann frames that overlap by half, spread evenly over a clip. */
export interface FrameGrid extends FrameGroup {
  readonly count: number
  readonly hopS: number
  /** Of each band's power in a frame of steady noise. */
  readonly degreesOfFreedom: readonly number[]
}

/**
 * Share of a frame that counts: (∫h²)²/(T·∫h⁴) with h the Hann window, that is (3/8)²/(35/128). In power, frames half a
 * length apart are all but independent (correlation 1/36).
 */
const HANN_SHARE = ((3 / 8) ** 2 * 128) / 35

export function frameGrid(group: FrameGroup, durationS: number): FrameGrid {
  const { frameS, from, to } = group
  const count = durationS < frameS ? 0 : Math.max(0, Math.ceil((2 * (durationS - frameS)) / frameS - 0.05)) + 1
  return {
    ...group,
    count,
    hopS: count > 1 ? (durationS - frameS) / (count - 1) : 0,
    degreesOfFreedom: EVIDENCE_BANDS.slice(from, to).map((band) => 2 * band.widthHz * frameS * HANN_SHARE),
  }
}

/** First frame that hears a moment, and the last; none when the last comes before the first. */
export function firstFrameAt(grid: FrameGrid, timeS: number): number {
  return grid.hopS === 0 ? 0 : Math.max(0, Math.ceil((timeS - grid.frameS) / grid.hopS))
}

export function lastFrameAt(grid: FrameGrid, timeS: number): number {
  return grid.hopS === 0 ? grid.count - 1 : Math.min(grid.count - 1, Math.floor(timeS / grid.hopS))
}

const STEPS = 1024
/** Squared Hann window over its mean square, from end to end. */
const WEIGHTS = Float64Array.from({ length: STEPS + 1 }, (_, i) => Math.sin((Math.PI * i) / STEPS) ** 4 / (3 / 8))

/** Power that a unit of energy at a moment gives a frame that hears it: h²(t)/∫h², 1/s. */
export function frameWeight(grid: FrameGrid, frame: number, timeS: number): number {
  const step = Math.round((STEPS * (timeS - frame * grid.hopS)) / grid.frameS)
  return WEIGHTS[Math.min(STEPS, Math.max(0, step))]! / grid.frameS
}
