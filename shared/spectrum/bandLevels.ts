import { DECIMATE_PASS_SHARE, decimate } from '../audio/decimate'
import { InputError } from '../base/errors'
import { powerToDb } from '../base/units'
import { type BandFrames, bandFrames } from './bandFrames'
import { frameLevels } from './frameLevels'
import { THIRD_OCTAVE_BANDS, type ThirdOctaveBand } from './thirdOctaveBands'
import { type Vouched, vouchedFrames } from './vouchedFrames'

/** Levels of one exact one-third-octave band; `null` where the clip cannot say. */
export interface BandLevels {
  /** Exact mid-band frequency, Hz. */
  readonly midHz: number
  /** Mean level over the clip, dBFS (a mean square of 1 reads 0). */
  readonly levelDbFs: number | null
  /** Level of the quiet frames: their 20th percentile, corrected so that steady noise reads its mean. */
  readonly quietDbFs: number | null
  /** Level of the busy frames: their 85th percentile, corrected the same way. */
  readonly busyDbFs: number | null
  /** Mean level with loud exceptions left out (at most a tenth of the clip), corrected the same way. */
  readonly steadyDbFs: number | null
}

/** Bands are trusted up to this share of the sample rate; recorders' and converters' filters begin above. */
const HIGHEST_SHARE_OF_RATE = 0.45

/**
 * How a group of neighbouring bands is measured. Lengths are in seconds and the same at every sample rate, so that clips
 * of different rates say the same of the same sound.
 */
interface Group {
  /** Index of the first band and of the one after the last in THIRD_OCTAVE_BANDS. */
  readonly from: number
  readonly to: number
  /** Frames for the mean: their bin is at most 1/8 of the narrowest band. */
  readonly meanFrameS: number
  /** Frames for quiet, busy and steady: the narrowest band holds at least 4 of their bins. */
  readonly shortFrameS: number
  /** Whether the short frames are short enough to tell quiet from busy; if not, they serve for steady only. */
  readonly tellsQuiet: boolean
}

const LOW_FRAME_S = 2048 / 3000 // 1024 samples at the 1.5 kHz that 48 kHz comes down to; bin 1.46 Hz

/** 63 to 125, 160 to 400 and 500 Hz to 6.3 kHz. The last group needs one kind of frame only: 11.7 Hz is right for both. */
const GROUPS: readonly Group[] = [
  { from: 0, to: 4, meanFrameS: LOW_FRAME_S, shortFrameS: LOW_FRAME_S / 2, tellsQuiet: false },
  { from: 4, to: 9, meanFrameS: LOW_FRAME_S, shortFrameS: 0.125, tellsQuiet: true },
  { from: 9, to: 21, meanFrameS: LOW_FRAME_S / 8, shortFrameS: LOW_FRAME_S / 8, tellsQuiet: true },
]
const FIRST_HIGH_BAND = 9

/**
 * Mean, quiet, busy and steady level of every exact one-third-octave band from 63 Hz to 6.3 kHz.
 *
 * Mean levels are Welch's: Hann segments that overlap by half, their power summed over the band, with bins at most 1/8
 * of the band, so that the response to a tone keeps within the class 1 limits of the standard. Bands from 500 Hz on are
 * taken from the clip at 18 to 35 kHz, the lower ones at 1.1 to 2.8 kHz, after a decimation whose aliases are 80 dB down.
 *
 * Quiet, busy and steady levels come from short frames (85 ms from 500 Hz on, 125 ms below). Quiet and busy are `null`
 * below 160 Hz, where a band is narrower than 4 bins of such a frame; steady is taken there from frames of 0.34 s.
 *
 * A band whose upper edge lies above 0.45 of the sample rate is `null`, and so is a band without any power, or with too
 * few frames: the clip then says nothing about it. Clips of 0.7 s and more have every mean, of 1 s and more every level.
 *
 * @param samples One channel at its native rate, finite; any level, also with a constant added.
 * @param vouched Rings found in it: the steady level keeps their moments in the bands round their pitch.
 * @returns One row a band, 21, in rising order of frequency.
 * @throws {InputError} a rate that is not above 0; a sample that is not finite.
 * @see IEC 61260-1:2014 (bands, class 1 limits), Welch 1967. [IEC61260], [Welch1967] in shared/base/sources.ts
 */
export function bandLevels(
  samples: Float32Array,
  sampleRateHz: number,
  vouched: readonly Vouched[] = [],
): readonly BandLevels[] {
  if (!(sampleRateHz > 0)) throw new InputError(`sampleRateHz is ${sampleRateHz}; must be above 0`)
  const high = broughtDown(samples, sampleRateHz, THIRD_OCTAVE_BANDS.at(-1)!)
  const low = broughtDown(high.samples, high.sampleRateHz, THIRD_OCTAVE_BANDS[FIRST_HIGH_BAND - 1]!)
  const centred = { ...low, samples: withoutMean(low.samples) }
  const timing = (group: Group) => ({ frameS: group.shortFrameS, durationS: samples.length / sampleRateHz, vouched })
  const rows = GROUPS.flatMap((group) => {
    const bands = THIRD_OCTAVE_BANDS.slice(group.from, group.to)
    const heard = bands.filter((band) => band.upperHz <= HIGHEST_SHARE_OF_RATE * sampleRateHz)
    const rows = groupLevels(group.from < FIRST_HIGH_BAND ? centred : high, heard, group, timing(group))
    return [...rows, ...bands.slice(heard.length).map(unheard)]
  })
  if (rows.some((row) => Number.isNaN(row.levelDbFs))) throw new InputError('samples hold a number that is not finite')
  return rows
}

interface Stream {
  readonly samples: Float32Array
  readonly sampleRateHz: number
}

/** The lowest rate, by halves, that keeps a band whole. */
function broughtDown(samples: Float32Array, sampleRateHz: number, highest: ThirdOctaveBand): Stream {
  const needed = (2 * highest.upperHz) / DECIMATE_PASS_SHARE
  let factor = 1
  while (sampleRateHz / (2 * factor) >= needed) factor *= 2
  return { samples: factor > 1 ? decimate(samples, factor) : samples, sampleRateHz: sampleRateHz / factor }
}

/** A microphone's direct voltage can be 40 dB above the sound, and the lowest bands are near it. */
function withoutMean(samples: Float32Array): Float32Array {
  let sum = 0
  for (let n = 0; n < samples.length; n++) sum += samples[n]!
  const mean = sum / samples.length
  return samples.map((sample) => sample - mean)
}

function groupLevels(
  { samples, sampleRateHz }: Stream,
  bands: readonly ThirdOctaveBand[],
  group: Group,
  timing: { readonly frameS: number; readonly durationS: number; readonly vouched: readonly Vouched[] },
): BandLevels[] {
  const short = bandFrames(samples, sampleRateHz, bands, group.shortFrameS)
  const long =
    group.meanFrameS === group.shortFrameS ? short : bandFrames(samples, sampleRateHz, bands, group.meanFrameS)
  return bands.map(({ midHz }, b) => {
    const kept = vouchedFrames(
      midHz,
      { count: short.powers[b]!.length, hopS: short.hopS, frameS: timing.frameS },
      timing.vouched,
    )
    const levels = frameLevels(short.powers[b]!, short.degreesOfFreedom[b]!, timing, kept)
    const told = group.tellsQuiet ? levels : null
    return {
      midHz,
      levelDbFs: meanLevelDb(long, b),
      quietDbFs: told && powerToDb(told.quietPower),
      busyDbFs: told && powerToDb(told.busyPower),
      steadyDbFs: levels && powerToDb(levels.steadyPower),
    }
  })
}

function meanLevelDb(frames: BandFrames, band: number): number | null {
  const powers = frames.powers[band]!
  let sum = 0
  for (let i = 0; i < powers.length; i++) sum += powers[i]!
  return powers.length === 0 || sum === 0 ? null : 10 * Math.log10(sum / powers.length)
}

function unheard({ midHz }: ThirdOctaveBand): BandLevels {
  return { midHz, levelDbFs: null, quietDbFs: null, busyDbFs: null, steadyDbFs: null }
}
