/** How loud it is, for somebody who has to turn a knob. */
export type LevelWord = 'dead' | 'faint' | 'good' | 'loud' | 'overloaded'

/** Below this the steps of a 16-bit recorder are heard in the sound: 3 of them, as a power. */
const FAINT_POWER = (3 / 32_768) ** 2

/** Above this loud moments have no room: -12 dBFS. Chosen: bubbling has peaks of 12 dB over its mean. */
const LOUD_POWER = 10 ** (-12 / 10)

/** Flat tops begin about here. */
const FULL_PEAK = 0.985

/**
 * A level in a word.
 *
 * @param power Mean square of the last second, full scale 1.
 * @param peak  Largest magnitude of it.
 * @see [AndroidCDD]: a phone turns 94 dB SPL into -36.0 dBFS unprocessed, 90 dB SPL into -22.4 dBFS for voice
 *   recognition; both are good levels.
 */
export function levelWord(power: number, peak: number): LevelWord {
  if (peak >= FULL_PEAK) return 'overloaded'
  if (!(power > 0)) return 'dead'
  if (power < FAINT_POWER) return 'faint'
  return power > LOUD_POWER ? 'loud' : 'good'
}

/** Parts of the sound by pitch, each with a word of its own on screen: ground, gurgle, ring, hiss. */
export const SOUND_PARTS = [
  { name: 'rumble', lowHz: 40, highHz: 200 },
  { name: 'gurgle', lowHz: 200, highHz: 800 },
  { name: 'ring', lowHz: 800, highHz: 3000 },
  { name: 'hiss', lowHz: 3000, highHz: 8000 },
] as const

export type SoundPart = (typeof SOUND_PARTS)[number]['name']

export interface LiveSpectrum {
  /** From 40 Hz to 8 kHz in even steps of pitch: 0 where nothing is heard, 1 where it is loudest possible. */
  readonly widths: readonly number[]
  /** Where the pitch, as the ear weighs it, has most; `null` in silence. */
  readonly loudest: SoundPart | null
}

/** The ribbon is at its thinnest and widest here, dBFS of a step of pitch. Chosen: from a good recorder's noise to a shout. */
const THIN_DB = -110
const WIDE_DB = -20

/**
 * A live spectrum for the eye: power in even steps of pitch, so that a steady hiss does not look louder than a gurgle
 * only because it is spread.
 *
 * @param binsDb       Level of each bin, dBFS, from 0 Hz to half the rate; minus infinity for silence.
 * @param sampleRateHz Of the sound.
 * @param steps        How many widths are wanted, at least 2.
 */
export function liveSpectrum(binsDb: Float32Array, sampleRateHz: number, steps: number): LiveSpectrum {
  const lowHz = SOUND_PARTS[0].lowHz
  const highHz = SOUND_PARTS.at(-1)!.highHz
  const binHz = sampleRateHz / 2 / binsDb.length
  const edge = (step: number) => lowHz * (highHz / lowHz) ** (step / steps)
  const widths = Array.from({ length: steps }, (_, step) => {
    const db = 10 * Math.log10(powerBetween(binsDb, binHz, edge(step), edge(step + 1)) + Number.MIN_VALUE)
    return Math.min(1, Math.max(0, (db - THIN_DB) / (WIDE_DB - THIN_DB)))
  })
  const powers = SOUND_PARTS.map((part) => powerBetween(binsDb, binHz, part.lowHz, part.highHz))
  const most = Math.max(...powers)
  return { widths, loudest: most > 0 ? SOUND_PARTS[powers.indexOf(most)]!.name : null }
}

/** Power between two pitches; a bin that is cut counts in part, so that steps finer than the bins are even. */
function powerBetween(binsDb: Float32Array, binHz: number, fromHz: number, toHz: number): number {
  let sum = 0
  for (let bin = Math.max(0, Math.floor(fromHz / binHz - 0.5)); bin < binsDb.length; bin++) {
    const low = (bin - 0.5) * binHz
    if (low >= toHz) break
    const share = (Math.min(toHz, low + binHz) - Math.max(fromHz, low)) / binHz
    if (share > 0) sum += share * 10 ** (binsDb[bin]! / 10)
  }
  return sum
}
