import type { Random } from '../base/random'
import type { SweepRow } from '../sweep/sweep'
import type { Family } from './families'
import type { Spot } from './ground'
import { type ClipPlan, type Nuisance, type Recorder, SPOILS } from './yard'

/** A point as it was told and as it truly lies. */
export interface YardPoint {
  readonly number: number
  readonly toldAlongM: number
  readonly toldOffsetM: number
  readonly spot: Spot
}

export interface Walk {
  readonly clips: readonly ClipPlan[]
  readonly airOff: 'all' | 'some' | 'none'
}

/** Seconds since 1970 of a walk's start: a made-up morning. */
const START_S = 1_780_300_800

/** The walk over the points: who is heard when, coupled how, with what recorder, disturbed by what. */
export function drawWalk(family: Family, points: readonly YardPoint[], random: Random): Walk {
  const draw = random.uniform()
  const airOff = draw < family.airOffAll ? 'all' : draw < family.airOffAll + family.airOffSome ? 'some' : 'none'
  const stops = drawStops(points, airOff, random)
  const timed = family.driftDb[1] > 2 || random.chance(0.7)
  const durationS = random.uniform(4, 8)
  const highPassHz = random.chance(0.3) ? random.uniform(100, 250) : null
  const drift = drawDrift(family, stops.length, random)
  const sd = random.uniform(...family.coupledSdDb)
  const clips = stops.flatMap((stop, index) => {
    const coupling = {
      gainDb: random.normal(0, sd),
      tiltDbPerOctave: random.normal(0, family.tiltSdDbPerOctave),
      driftDb: drift[index]!,
    }
    const floorDb = random.normal(0, 1)
    return stop.airs.map((air, nth): ClipPlan => {
      const timeS = timed ? START_S + index * 40 + nth * 15 : null
      return {
        ...coupling,
        row: { ...stopRow(stop, air), timeS },
        spot: stop.point.spot,
        durationS,
        floorDb: floorDb + random.normal(0, 0.4),
        recorder: drawRecorder(family, highPassHz, random),
        nuisances: drawNuisances(family, random),
        spoil: random.chance(family.spoiltShare) ? random.pick(SPOILS) : null,
      }
    })
  })
  return { clips, airOff }
}

/** One setting-down, or, when on and off are no pair, one clip. */
interface Stop {
  readonly point: YardPoint
  readonly take: number
  readonly airs: readonly ('on' | 'off')[]
  readonly sharedTake: boolean
}

function drawStops(points: readonly YardPoint[], airOff: 'all' | 'some' | 'none', random: Random): Stop[] {
  const draw = random.uniform()
  const order = draw < 0.45 ? points : draw < 0.7 ? [...points].reverse() : random.shuffled(points)
  const sharedTake = random.chance(0.7)
  const share = airOff === 'all' ? 1 : airOff === 'some' ? random.uniform(0.2, 0.6) : 0
  const withOff = new Set(order.filter(() => random.chance(share)))
  if (airOff === 'some' && withOff.size === 0) withOff.add(random.pick(order))
  const take = (point: YardPoint, airs: readonly ('on' | 'off')[]) => ({ point, take: 1, airs, sharedTake })
  const stops: Stop[] = sharedTake
    ? order.map((point) => take(point, withOff.has(point) ? ['on', 'off'] : ['on']))
    : [
        ...order.map((point) => take(point, ['on'])),
        ...order.filter((p) => withOff.has(p)).map((p) => take(p, ['off'])),
      ]
  if (sharedTake && random.chance(0.4))
    for (const point of random.shuffled(order).slice(0, random.integer(1, 2)))
      stops.push({ point, take: 2, airs: ['on'], sharedTake })
  return stops
}

function stopRow(stop: Stop, air: 'on' | 'off'): SweepRow {
  const number = String(stop.point.number).padStart(2, '0')
  return {
    point: stop.point.number,
    alongM: stop.point.toldAlongM,
    file: `${number}-${air}${stop.take > 1 ? `-take${stop.take}` : ''}.wav`,
    air,
    take: stop.take,
    sharedTake: stop.sharedTake,
    sweep: '1',
    offsetM: stop.point.toldOffsetM,
    timeS: null,
    contact: null,
    airKpa: null,
    note: '',
    unknown: {},
  }
}

/** The air grows or fades over the walk, evenly but for a little wandering, dB for each stop. */
function drawDrift(family: Family, stops: number, random: Random): number[] {
  const size = random.uniform(...family.driftDb) * (random.chance(0.5) ? 1 : -1)
  return Array.from({ length: stops }, (_, i) => (size * i) / Math.max(1, stops - 1) + random.normal(0, 0.3))
}

const RECORDERS: readonly Omit<Recorder, 'highPassHz' | 'ridesGain'>[] = [
  { sampleRateHz: 8000, encoding: { kind: 'pcm', bits: 16 } },
  { sampleRateHz: 16000, encoding: { kind: 'pcm', bits: 16 } },
  { sampleRateHz: 22050, encoding: { kind: 'pcm', bits: 16 } },
  { sampleRateHz: 44100, encoding: { kind: 'pcm', bits: 24 } },
  { sampleRateHz: 48000, encoding: { kind: 'float', bits: 32 } },
]

function drawRecorder(family: Family, highPassHz: number | null, random: Random): Recorder {
  const model = family.mixedRates ? random.pick(RECORDERS) : RECORDERS[1]!
  return { ...model, highPassHz, ridesGain: random.chance(family.ridingShare) }
}

function drawNuisances(family: Family, random: Random): Nuisance[] {
  if (!random.chance(family.nuisanceShare)) return []
  const first = random.pick(family.nuisances)
  const second = random.pick(family.nuisances)
  return random.chance(family.nuisanceShare / 2) && second !== first ? [first, second] : [first]
}
