import type { Clip } from '../audio/clip'
import type { Line } from '../line/line'
import type { SweepRow } from '../sweep/sweep'
import type { BubbleTrain, Slugs } from './bubbleTrain'
import type { Ground, Spot } from './ground'

/** Something that sounds for as long as the air is on, or always. Spectra are power per hertz at 1 m, on the grid. */
export interface Emitter {
  readonly kind: 'leak' | 'inlet' | 'moving' | 'noise'
  readonly alongM: number
  readonly offsetM: number
  readonly depthM: number
  readonly bubbles: BubbleTrain | null
  /** A rhythm of bubbling and silence; `null`: it never pauses. */
  readonly slugs: Slugs | null
  /** Steady hiss: the jet of a leak, an inlet, a machine. */
  readonly hissPsd: Float64Array | null
  /** Steady tones: a pump's comb. */
  readonly tones: readonly Tone[]
  /** Level of what arrives along the pipe against what comes straight up, over the source at 400 Hz, dB; `null`: none. */
  readonly pipeDb: number | null
  /** Moving air sounds at a few places between here and the emitter's own place, new ones in every clip; else `null`. */
  readonly movesFromM: number | null
  readonly sounds: 'with air' | 'always'
}

export interface Tone {
  readonly frequencyHz: number
  /** Power at 1 m. */
  readonly power: number
}

export const NUISANCES = ['footsteps', 'knocks', 'gusts', 'voices', 'birds', 'traffic', 'rain', 'strokes'] as const
export type Nuisance = (typeof NUISANCES)[number]

export const SPOILS = ['clipped', 'short', 'silent', 'handled', 'faint'] as const
export type Spoil = (typeof SPOILS)[number]

/** What recorded a clip. */
export interface Recorder {
  readonly sampleRateHz: number
  readonly encoding: Clip['encoding']
  /** Corner of a built-in high-pass, Hz; `null`: none. */
  readonly highPassHz: number | null
  /** Its gain rides: pulled down by loud moments, back up within seconds. */
  readonly ridesGain: boolean
}

/** Everything that makes one clip besides the yard itself. */
export interface ClipPlan {
  readonly row: SweepRow
  /** Where the microphone truly stood. */
  readonly spot: Spot
  readonly durationS: number
  /** Coupling of this setting-down. */
  readonly gainDb: number
  readonly tiltDbPerOctave: number
  /** How much louder the air sounds at this time than at the reference. */
  readonly driftDb: number
  /** How much louder the ambient floor is in this clip. */
  readonly floorDb: number
  readonly recorder: Recorder
  readonly nuisances: readonly Nuisance[]
  readonly spoil: Spoil | null
}

/** What is true of a yard and never told to the locator. */
export interface YardTruth {
  /** Where each hole is, m along; empty: no leak. */
  readonly leakAlongM: readonly number[]
  /** Where each one.s sound leaves the bedding: differs from the hole only where the exit is shifted. */
  readonly exitAlongM: readonly number[]
  /** Mean signal over the ambient floor at the point nearest each leak, in the best one-third-octave band, dB. */
  readonly overFloorDb: readonly number[]
  readonly bestBandHz: readonly number[]
  readonly depthM: number
  readonly spacingM: number
  readonly airOff: 'all' | 'some' | 'none'
}

/** A synthetic yard: the truth, what was told of it, and a plan for every clip. Plain data; clips come from it lazily. */
export interface Yard {
  readonly seed: string
  readonly family: string
  readonly ground: Ground
  readonly emitters: readonly Emitter[]
  /** Ambient noise of the ground, power per hertz on the grid. */
  readonly floorPsd: Float64Array
  /** The microphone's and recorder's own noise. */
  readonly selfNoisePsd: Float64Array
  readonly told: Line
  readonly clips: readonly ClipPlan[]
  readonly truth: YardTruth
}
