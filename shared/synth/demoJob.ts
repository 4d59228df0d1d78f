import { Random } from '../base/random'
import type { Line } from '../line/line'
import { linePath } from '../line/linePath'
import { meanPsd, scaled } from './drawEmitters'
import { onGrid, totalPower } from './grid'
import type { Ground, GroundStretch } from './ground'
import { bump, withPower } from './nuisances/nuisanceClip'
import { overFloor } from './solveLevel'
import type { ClipPlan, Emitter, Nuisance, Recorder, Yard } from './yard'

/**
 * The invented job: the return line of the fountain in Alder Square, 2 in PVC in three legs under grass, pavers and a
 * concrete pad. An elbow under the pavers is cracked. Everything is made up; nobody recorded any of it.
 */
export const DEMO_SEED = 'Alder Square'

/** Where the cracked elbow is, m along: between point 7 (6 m) and point 8 (7 m). */
export const DEMO_LEAK_M = 6.35

/** Leak over the ambient floor at point 7, in its best band, dB. */
const DEMO_OVER_FLOOR_DB = 20

const LENGTH_M = 13.4
const DEPTH_M = 0.5
const POINTS = 14
const DURATION_S = 5
/** A made-up spring morning: 2026-04-18 08:40 UTC. */
const START_S = Date.UTC(2026, 3, 18, 8, 40) / 1000

const VERTICES = [
  { xM: 0, yM: 0 },
  { xM: 6.35, yM: 0 },
  { xM: 6.35, yM: 4.05 },
  { xM: 9.35, yM: 4.05 },
]

const SOIL = { absorptionDbPerCmKhz: 0.18, speedMPerS: 170, obliquity: 0.3, surfaceShare: 0.25, coherence: 0.3 }

const STRETCHES: readonly GroundStretch[] = [
  { fromM: 0, toM: 4.6, cover: 'grass', depthM: DEPTH_M, medium: SOIL, coverLossDbPerKhz: 1, plate: null },
  {
    fromM: 4.6,
    toM: 9.2,
    cover: 'pavers',
    depthM: DEPTH_M,
    medium: { ...SOIL, absorptionDbPerCmKhz: 0.15 },
    coverLossDbPerKhz: 3,
    plate: null,
  },
  {
    fromM: 9.2,
    toM: LENGTH_M,
    cover: 'slab',
    depthM: DEPTH_M,
    medium: SOIL,
    coverLossDbPerKhz: 0,
    plate: { thicknessM: 0.1, lossFactor: 0.15, sidewaysDb: -6, resonanceHz: 140, resonanceQuality: 2 },
  },
]

const GROUND: Ground = {
  route: linePath({ vertices: VERTICES }),
  stretches: STRETCHES,
  pipe: {
    lossDbPerM: 0.6,
    lossDbPerMKhz: 6,
    fittings: [
      { atM: 6.35, radiatesLikeM: 0.6, lossDb: 1.5 },
      { atM: 10.4, radiatesLikeM: 0.6, lossDb: 1.5 },
    ],
  },
}

const TOLD: Line = {
  lengthM: LENGTH_M,
  depthM: DEPTH_M,
  airInletM: -1.2,
  vertices: VERTICES,
  routeSdM: 0.1,
  stretches: [
    { fromM: 0, toM: 4.6, cover: 'grass', depthM: null, digCostPerM: 40 },
    { fromM: 4.6, toM: 9.2, cover: 'pavers', depthM: null, digCostPerM: 90 },
    { fromM: 9.2, toM: LENGTH_M, cover: 'slab', depthM: null, digCostPerM: 310 },
  ],
  fittings: [
    { atM: 6.35, kind: 'elbow' },
    { atM: 10.4, kind: 'elbow' },
    { atM: LENGTH_M, kind: 'end' },
  ],
  noises: [{ atM: 14.2, kind: 'pump' }],
  pipe: { nominalIn: 2, material: 'pvc' },
  unknown: { invented: true },
}

/** What disturbs which clip; everything else is left in peace. */
const DISTURBED: Readonly<Record<string, readonly Nuisance[]>> = {
  '02-on': ['gusts'],
  '03-on': ['footsteps'],
  '05-off': ['gusts'],
  '06-off': ['birds'],
  '07-on': ['birds'],
  '09-on': ['footsteps'],
  '10-off': ['footsteps'],
  '11-on': ['voices'],
  '12-off': ['traffic'],
  '13-on': ['gusts'],
}

/** The clip whose gain was turned up so far that it is cut off throughout. */
const SPOILT = '04-on'

const RECORDER: Recorder = {
  sampleRateHz: 16_000,
  encoding: { kind: 'pcm', bits: 16 },
  highPassHz: null,
  ridesGain: false,
}

const OTHER_RECORDERS: Readonly<Record<string, Recorder>> = {
  '05-off': { ...RECORDER, sampleRateHz: 44_100, encoding: { kind: 'pcm', bits: 24 } },
  '12-on': { ...RECORDER, sampleRateHz: 48_000, encoding: { kind: 'float', bits: 32 } },
}

/** Ambient noise of a small square in the morning: −85 dBFS/Hz at 500 Hz, falling. */
const FLOOR_PSD = onGrid((f) => 10 ** -8.5 * (0.6 * (Math.max(f, 40) / 500) ** -1.9 + 0.4 * (f / 500) ** -0.8))
const SELF_NOISE_PSD = onGrid(() => 10 ** -11.8)

/** The job as a yard: fourteen points a metre apart, air on and off without lifting the microphone. */
export function demoYard(): Yard {
  const random = Random.named(DEMO_SEED, 'walk')
  const clips = Array.from({ length: POINTS }, (_, i) => settingDown(i, random)).flat()
  const leak = levelled(rawLeak(), 6, DEMO_OVER_FLOOR_DB)
  return {
    seed: DEMO_SEED,
    family: 'demo',
    ground: GROUND,
    emitters: [leak.emitter, levelled(rawInlet(), 0, 9).emitter, levelled(rawPump(), 13, 8).emitter],
    floorPsd: FLOOR_PSD,
    selfNoisePsd: SELF_NOISE_PSD,
    told: TOLD,
    clips,
    truth: {
      leakAlongM: [DEMO_LEAK_M],
      exitAlongM: [DEMO_LEAK_M],
      overFloorDb: [DEMO_OVER_FLOOR_DB],
      bestBandHz: [leak.bestBandHz],
      depthM: DEPTH_M,
      spacingM: 1,
      airOff: 'all',
    },
  }
}

function settingDown(index: number, random: Random): ClipPlan[] {
  const number = String(index + 1).padStart(2, '0')
  const coupling = { gainDb: random.normal(0, 2), tiltDbPerOctave: random.normal(0, 0.8) }
  const spot = { alongM: index + random.normal(0, 0.01), offsetM: random.normal(0, 0.02) }
  // The air fades by 2 dB over the walk.
  const driftDb = -2 * ((index - 6) / (POINTS - 1))
  const floorDb = random.normal(0, 0.8)
  return (['on', 'off'] as const).map((air, nth) => {
    const name = `${number}-${air}`
    return {
      ...coupling,
      row: {
        point: index + 1,
        alongM: index,
        file: `${name}.wav`,
        air,
        take: 1,
        sharedTake: true,
        sweep: '1',
        offsetM: 0,
        timeS: START_S + index * 70 + nth * 20,
        contact: index < 4 ? 'spike' : 'plate',
        airKpa: null,
        note: '',
        unknown: {},
      },
      spot,
      durationS: DURATION_S,
      driftDb,
      floorDb: floorDb + random.normal(0, 0.3),
      recorder: OTHER_RECORDERS[name] ?? RECORDER,
      nuisances: DISTURBED[name] ?? [],
      spoil: name === SPOILT ? 'clipped' : null,
    }
  })
}

function levelled(raw: Emitter, nearestM: number, overFloorDb: number): { emitter: Emitter; bestBandHz: number } {
  const floor = FLOOR_PSD.map((p, g) => p + SELF_NOISE_PSD[g]!)
  const now = overFloor(GROUND, raw, { alongM: nearestM, offsetM: 0 }, floor)
  return {
    emitter: scaled(raw, 10 ** ((overFloorDb - now.overFloorDb) / 10)),
    bestBandHz: now.bestBand.midHz,
  }
}

const SILENT: Omit<Emitter, 'kind' | 'alongM' | 'depthM' | 'sounds'> = {
  offsetM: 0,
  bubbles: null,
  slugs: null,
  hissPsd: null,
  tones: [],
  pipeDb: null,
  movesFromM: null,
}

/** A cracked elbow: some twenty bubbles a second of 3 mm, at random, and the hiss of water past the crack. */
function rawLeak(): Emitter {
  const bubbles = {
    ratePerS: 22,
    arrival: 'broken',
    medianRadiusM: 0.0032,
    radiusSpread: 0.3,
    excitationSdDb: 4,
    amplitude: 1,
  } as const
  const silent: Emitter = { ...SILENT, kind: 'leak', alongM: DEMO_LEAK_M, depthM: DEPTH_M, sounds: 'with air', bubbles }
  const bubbling = totalPower(meanPsd(silent))
  return { ...silent, pipeDb: -20, hissPsd: withPower(bump(120, 600), 0.15 * bubbling) }
}

/** The compressor's hose enters at the basin, 1.2 m before the line's start. */
function rawInlet(): Emitter {
  const hissPsd = withPower(bump(400, 2500), 1)
  return { ...SILENT, kind: 'inlet', alongM: -1.2, depthM: 0.1, sounds: 'with air', hissPsd, pipeDb: -20 }
}

/** A neighbour's pump beyond the pad: a 50 Hz comb that never stops. */
function rawPump(): Emitter {
  const tones = Array.from({ length: 10 }, (_, h) => ({
    frequencyHz: 50 * (h + 1),
    power: (h % 2 === 1 ? 1 : 0.2) * 0.6 ** h,
  }))
  const hissPsd = withPower(bump(80, 300), 0.4)
  return { ...SILENT, kind: 'noise', alongM: 14.2, offsetM: 1.5, depthM: 0.1, sounds: 'always', hissPsd, tones }
}
