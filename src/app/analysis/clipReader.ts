import { FormatError } from '../../../shared/base/errors'
import { PASS_BAND_LIMITS } from '../../../shared/listen/passBand'
import type { PowerDensity } from '../../../shared/spectrum/welch'
import type { Keyed } from '../../../shared/words/sentence'
import type { CallName, Calls, PlainSamples, Sound, SpectrogramPicture } from '../../worker/protocol'
import type { Database } from '../storage/database'
import { loadSound } from '../storage/sounds'
import type { Analyst } from './analyst'
import { buffersOf, soundOf } from './soundOf'

/** Where the sound of a clip is, and what it is called in messages. */
export interface ClipSound {
  /** `null` when its file was never there. */
  readonly sha256: string | null
  readonly file: string
}

/** What was read, or why it could not be. */
export type ClipReading<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly why: Keyed }

/** Bins of the spectrum are this fine, s: 6 Hz, so that the lowest third of an octave holds two. */
export const SPECTRUM_SEGMENT_S = 0.17

/**
 * Short enough to tell rings apart, no wider than any screen, and lifted toward high pitches so that the hum of the
 * ground does not fill the picture. Chosen by eye.
 */
export const SPECTROGRAM = {
  segmentS: 0.05,
  maxColumns: 600,
  rows: { ...PASS_BAND_LIMITS, rowCount: 160, tiltDbPerOctave: 4.5 },
} as const

/** How many of each are kept: a point with its neighbours, and the point looked at before. */
const MOST_KEPT = { spectrum: 24, spectrogram: 6, samples: 8 } as const

const LOST: Keyed = { key: 'sound_lost', values: {} }
const TOO_SHORT: Keyed = { key: 'listen_too_short', values: {} }

/** Spectra, spectrograms and samples of kept clips, worked out in the worker; the last few are remembered. */
export class ClipReader {
  private readonly kept = new Map<string, Promise<ClipReading<unknown>>>()

  constructor(
    private readonly analyst: Analyst,
    private readonly database: Database,
  ) {}

  spectrum(clip: ClipSound): Promise<ClipReading<PowerDensity>> {
    return this.read('spectrum', clip, (sound) => ({ sound, segmentS: SPECTRUM_SEGMENT_S }))
  }

  spectrogram(clip: ClipSound): Promise<ClipReading<SpectrogramPicture>> {
    return this.read('spectrogram', clip, (sound) => ({ sound, ...SPECTROGRAM }))
  }

  samples(clip: ClipSound): Promise<ClipReading<PlainSamples>> {
    return this.read('samples', clip, (sound) => ({ sound }))
  }

  private read<Name extends keyof typeof MOST_KEPT>(
    name: Name,
    clip: ClipSound,
    inputOf: (sound: Sound) => Calls[Name]['in'],
  ): Promise<ClipReading<NonNullable<Calls[Name]['out']>>> {
    type Reading = Promise<ClipReading<NonNullable<Calls[Name]['out']>>>
    const key = `${name}/${clip.sha256}`
    const before = this.kept.get(key) as Reading | undefined
    const reading = before ?? this.readNow(name, clip, inputOf)
    this.kept.delete(key)
    this.kept.set(key, reading)
    this.forget(name)
    if (before === undefined) reading.catch(() => this.kept.delete(key))
    return reading
  }

  private async readNow<Name extends CallName>(
    name: Name,
    { sha256, file }: ClipSound,
    inputOf: (sound: Sound) => Calls[Name]['in'],
  ): Promise<ClipReading<NonNullable<Calls[Name]['out']>>> {
    const bytes = sha256 === null ? null : await loadSound(this.database, sha256)
    if (bytes === null) return { ok: false, why: LOST }
    try {
      const sound = await soundOf(bytes, file)
      const value = await this.analyst.call(name, inputOf(sound), { transfer: buffersOf(sound) })
      return value === null ? { ok: false, why: TOO_SHORT } : { ok: true, value }
    } catch (error) {
      if (!(error instanceof FormatError)) throw error
      return { ok: false, why: { key: 'unreadable', values: { why: error.mend } } }
    }
  }

  private forget(name: keyof typeof MOST_KEPT): void {
    const keys = [...this.kept.keys()].filter((key) => key.startsWith(`${name}/`))
    for (const key of keys.slice(0, -MOST_KEPT[name])) this.kept.delete(key)
  }
}

const READERS = new WeakMap<Analyst, ClipReader>()

/** The one reader of an analyst, so that a point looked at again is there at once. */
export function clipReaderOf(analyst: Analyst, database: Database): ClipReader {
  const reader = READERS.get(analyst) ?? new ClipReader(analyst, database)
  READERS.set(analyst, reader)
  return reader
}
