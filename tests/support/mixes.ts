import FFT from 'fft.js'
import { resample } from '../../shared/audio/resample'
import { Random } from '../../shared/base/random'
import { quantile } from '../../shared/base/statistics'
import type { Line } from '../../shared/line/line'
import { bandLevels } from '../../shared/spectrum/bandLevels'
import type { SweepRow } from '../../shared/sweep/sweep'
import { NO_LINE } from './idealSweep'
import { realSound } from './realSounds'

/** Sounds of bubbly water that stand for the leak, and ordinary ones that stand for the yard. Names of the catalogue. */
export const MIX_WATERS = ['water01', 'water02', 'water03', 'water', 'brook1', 'brook2', 'brook3', 'brook4']
export const MIX_YARDS = ['arcticwind', 'city_abnd_ufoai_atm', 'ufo_night_atm', 'hum2', 'wind_turbine', 'machine1']

const RATE_HZ = 16_000
const CLIP_S = 6
const CLIP_SAMPLES = RATE_HZ * CLIP_S

export interface MixedClip {
  readonly row: SweepRow
  readonly samples: Float32Array
  readonly sampleRateHz: number
}

export interface Mix {
  readonly name: string
  readonly line: Line
  readonly clips: readonly MixedClip[]
  readonly leakAlongM: number
  readonly spacingM: number
}

/**
 * A sweep mixed from real sounds: bubbly water heard through soil by the published laws, over a real background.
 *
 * The water is carried to each point by spherical spreading, d/r, and by absorption proportional to frequency, drawn
 * log-uniform from 12 to 96 dB per m and kHz (0.12 to 0.96 dB per cm and kHz, [OelzeOBrienDarmody2002]), over the whole
 * slant path. Each clip takes another stretch of water and of background; each setting-down has a gain (2 dB) and a
 * tilt (0.7 dB per octave) of its own on what comes from below.
 *
 * @param overFloorDb Mean level of the water over the floor at the nearest point in the best one-third-octave band from
 *   100 Hz to 2.5 kHz; the floor is what nine of ten clips of the background stay below there.
 */
export async function mixedSweep(seed: number, overFloorDb: number): Promise<Mix> {
  const random = Random.named(seed, 'mix')
  const water = await at16kHz(random.pick(MIX_WATERS))
  const yard = await at16kHz(random.pick(MIX_YARDS))
  const depthM = random.uniform(0.3, 0.7)
  const spacingM = depthM * random.uniform(0.7, 1.8)
  const count = random.integer(9, 13)
  const leakAlongM = random.uniform(1, count - 2) * spacingM
  const absorptionDbPerMKhz = random.logUniform(12, 96)
  const offTaken = random.chance(0.6)
  const slantTo = (alongM: number) => Math.hypot(alongM - leakAlongM, depthM)
  const nearestM = Math.round(leakAlongM / spacingM) * spacingM
  const gainDb = gainFor(water.samples, yard.samples, overFloorDb, {
    slantM: slantTo(nearestM),
    depthM,
    absorptionDbPerMKhz,
  })

  const clips: MixedClip[] = []
  for (let k = 0; k < count; k++) {
    const coupling = { gainDb: gainDb + random.normal(0, 2), tiltDbPerOctave: random.normal(0, 0.7) }
    for (const air of offTaken ? (['on', 'off'] as const) : (['on'] as const)) {
      const samples = stretchOf(yard.samples, random)
      if (air === 'on') {
        const path = { slantM: slantTo(k * spacingM), depthM, absorptionDbPerMKhz }
        const heard = throughSoil(stretchOf(water.samples, random), path, coupling)
        for (let i = 0; i < samples.length; i++) samples[i]! += heard[i]!
      }
      clips.push({ row: rowOf(k, k * spacingM, air), samples, sampleRateHz: RATE_HZ })
    }
  }
  return {
    name: `${seed}: ${water.name} over ${yard.name}, ${offTaken ? 'air on and off' : 'air on only'}`,
    line: { ...NO_LINE, lengthM: (count - 1) * spacingM, depthM },
    clips,
    leakAlongM,
    spacingM,
  }
}

interface SoilPath {
  readonly slantM: number
  readonly depthM: number
  readonly absorptionDbPerMKhz: number
}

interface NamedSound {
  readonly name: string
  readonly samples: Float32Array
}

/** Sounds by name, since many mixes share them. */
const resampled = new Map<string, Promise<NamedSound>>()

function at16kHz(name: string): Promise<NamedSound> {
  const sound = resampled.get(name) ?? resampleTo16kHz(name)
  resampled.set(name, sound)
  return sound
}

async function resampleTo16kHz(name: string): Promise<NamedSound> {
  const { samples, sampleRateHz } = await realSound(name)
  // Game loops carry fades at both ends.
  const edge = Math.round(0.2 * sampleRateHz)
  return { name, samples: resample(samples.subarray(edge, samples.length - edge), sampleRateHz, RATE_HZ) }
}

/** Six seconds from a random place on; a short recording goes round, joined over 50 ms. */
function stretchOf(samples: Float32Array, random: Random): Float32Array {
  const join = Math.round(0.05 * RATE_HZ)
  const period = samples.length - join
  const from = random.integer(0, Math.max(0, period - 1))
  const stretch = new Float32Array(CLIP_SAMPLES)
  for (let i = 0; i < stretch.length; i++) {
    const at = (from + i) % period
    const part = at / join
    stretch[i] =
      at >= join || from + i < period
        ? samples[at]!
        : samples[at]! * Math.sqrt(part) + samples[period + at]! * Math.sqrt(1 - part)
  }
  return stretch
}

/** Filters by the soil's loss and the setting-down's coupling, without delay. */
function throughSoil(
  samples: Float32Array,
  path: SoilPath,
  coupling: { gainDb: number; tiltDbPerOctave: number },
): Float32Array {
  const size = 2 ** Math.ceil(Math.log2(samples.length))
  const fft = transformOf(size)
  const padded = new Float64Array(size)
  padded.set(samples)
  const spectrum = new Float64Array(2 * size)
  fft.realTransform(spectrum, padded)
  // The upper half is the lower one's mirror image; of the real part of the result it makes a half.
  for (let k = 0; k <= size / 2; k++) {
    const hz = (k * RATE_HZ) / size
    const db = soilDb(path, hz) + coupling.gainDb + coupling.tiltDbPerOctave * Math.log2(Math.max(hz, 50) / 500)
    const factor = 10 ** (db / 20) * (k === 0 || k === size / 2 ? 1 : 2)
    spectrum[2 * k]! *= factor
    spectrum[2 * k + 1]! *= factor
  }
  spectrum.fill(0, size + 2)
  const out = new Float64Array(2 * size)
  fft.inverseTransform(out, spectrum)
  const heard = new Float32Array(samples.length)
  for (let i = 0; i < heard.length; i++) heard[i] = out[2 * i]!
  return heard
}

const transforms = new Map<number, FFT>()

function transformOf(size: number): FFT {
  const transform = transforms.get(size) ?? new FFT(size)
  transforms.set(size, transform)
  return transform
}

function soilDb({ slantM, depthM, absorptionDbPerMKhz }: SoilPath, hz: number): number {
  return -20 * Math.log10(slantM / depthM) - (absorptionDbPerMKhz * slantM * hz) / 1000
}

/**
 * Gain of the water, dB, that puts it `overFloorDb` over the background in its best band at the nearest point.
 *
 * The floor of a band is the level that nine of ten six-second stretches of the background stay below: in gusts a mean
 * margin of 12 dB can be none in the very clip that matters.
 */
function gainFor(water: Float32Array, yard: Float32Array, overFloorDb: number, path: SoilPath): number {
  const floors = floorsOf(yard)
  const over = bandLevels(water, RATE_HZ).map(({ midHz, levelDbFs }, b) => {
    const floor = floors[b]!
    if (midHz < 95 || midHz > 2600 || levelDbFs === null || floor === null) return Number.NEGATIVE_INFINITY
    return levelDbFs + soilDb(path, midHz) - floor
  })
  return overFloorDb - Math.max(...over)
}

const known = new WeakMap<Float32Array, (number | null)[]>()

function floorsOf(yard: Float32Array): (number | null)[] {
  const floors = known.get(yard) ?? measureFloors(yard)
  known.set(yard, floors)
  return floors
}

function measureFloors(yard: Float32Array): (number | null)[] {
  const random = new Random('floors')
  const stretches = Array.from({ length: 12 }, () => bandLevels(stretchOf(yard, random), RATE_HZ))
  return stretches[0]!.map((_, b) => {
    const levels = stretches.flatMap((bands) => bands[b]!.levelDbFs ?? [])
    return levels.length < stretches.length ? null : quantile(levels, 0.9)
  })
}

function rowOf(index: number, alongM: number, air: 'on' | 'off'): SweepRow {
  return {
    point: index + 1,
    alongM,
    file: `${String(index + 1).padStart(2, '0')}-${air}.wav`,
    air,
    take: 1,
    sharedTake: true,
    sweep: '1',
    offsetM: 0,
    timeS: null,
    contact: null,
    airKpa: null,
    note: '',
    unknown: {},
  }
}
