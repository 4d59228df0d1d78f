import { type BubbleTrain, trainScatter } from './bubbleTrain'
import { meanPsd } from './drawEmitters'
import { familyNamed } from './families'
import { bandPower, CELL_WIDTH_HZ, type GridBand, SIGNAL_BANDS } from './grid'
import type { Spot } from './ground'
import { hearing } from './hearing'
import { informationBound, type Measurement } from './informationBound'
import type { ClipPlan, Emitter, Yard } from './yard'
import { isCounted, type Unknown, yardUnknowns } from './yardUnknowns'

/**
 * How exactly the place of a yard's leak can be told from its band levels at best, as a standard deviation, m.
 *
 * The laws of the yard are taken as known. Unknown are: the leak's and the floor's level in every band; gain, tilt and
 * floor of every setting-down; how far it truly stood from its mark; the drift; and everything that `yardUnknowns` lists
 * of soil, covers, slab, pipe, depth, inlet and machines: each with the spread the yard was drawn with. Levels scatter as
 * noise and countable bubbles do. Moving air, nuisances and fittings are left out, rings by the piece are not used.
 *
 * @param misfitDb Standard deviation of what an estimate's own law misses of the ground, independent in every clip and
 *   band, dB; 0: it knows the yard's law to the letter, which nobody in a real yard does.
 * @returns `null` where it cannot be computed: no leak or two, slugs, a riding gain, an exit beside the hole, or
 *   too little heard.
 */
export function positionBound(yard: Yard, misfitDb = 0): number | null {
  const leaks = yard.emitters.filter((emitter) => emitter.kind === 'leak')
  const leak = leaks[0]
  const usable = yard.clips.filter((plan) => plan.spoil === null)
  const shifted = yard.truth.exitAlongM[0] !== yard.truth.leakAlongM[0]
  if (leak === undefined || leaks.length > 1 || leak.slugs !== null || shifted) return null
  if (usable.some((plan) => plan.recorder.ridesGain)) return null
  const model = modelOf(yard, leak, usable, misfitDb)
  return informationBound(
    usable.flatMap((plan) => clipMeasurements(model, plan)),
    priorSds(model),
  )
}

/** The yard, what is unknown of it, and the order of the parameters: place, unknowns, drift, bands, settings, points. */
interface Model {
  readonly yard: Yard
  readonly leak: Emitter
  readonly misfitDb: number
  readonly clips: readonly ClipPlan[]
  readonly unknowns: readonly (Unknown & { readonly more: Yard })[]
  readonly settings: readonly string[]
  /** Every spot, and the same a little further along and across. */
  readonly spots: readonly { readonly spot: Spot; readonly moved: readonly Spot[] }[]
  readonly at: {
    readonly drift: number
    readonly source: number
    readonly floor: number
    readonly settings: number
    readonly spots: number
  }
}

const BANDS = SIGNAL_BANDS.length
const keyOf = ({ row }: ClipPlan) => (row.sharedTake ? `${row.point}/${row.take}` : row.file)

function modelOf(yard: Yard, leak: Emitter, clips: readonly ClipPlan[], misfitDb: number): Model {
  const placed = (alongM: number) => ({
    ...yard,
    emitters: yard.emitters.map((emitter) => (emitter === leak ? { ...leak, alongM: leak.alongM + alongM } : emitter)),
  })
  const place: Unknown = { sd: Number.POSITIVE_INFINITY, step: 0.02 * leak.depthM, changed: (_, by) => placed(by) }
  const unknowns = [place, ...yardUnknowns(yard)].map((unknown) => ({
    ...unknown,
    more: unknown.changed(yard, unknown.step),
  }))
  const stepM = 0.1 * placingSdM(yard)
  const settings = [...new Set(clips.map(keyOf))]
  const drift = unknowns.length
  return {
    yard,
    leak,
    misfitDb,
    clips,
    unknowns,
    settings,
    spots: [...new Set(clips.map((plan) => plan.spot))].map((spot) => ({
      spot,
      moved: [
        { ...spot, alongM: spot.alongM + stepM },
        { ...spot, offsetM: spot.offsetM + stepM },
      ],
    })),
    at: {
      drift,
      source: drift + 1,
      floor: drift + 1 + BANDS,
      settings: drift + 1 + 2 * BANDS,
      spots: drift + 1 + 2 * BANDS + 3 * settings.length,
    },
  }
}

/** Spread of a point from its mark, m: the lesser of 2 cm and 3 % of the spacing, as it was drawn. */
function placingSdM({ truth }: Yard): number {
  return Math.min(0.02, 0.03 * truth.spacingM)
}

function priorSds({ yard, unknowns, settings, spots }: Model): number[] {
  const family = familyNamed(yard.family)
  const driftSd = family === null ? 2 : Math.max(0.3, family.driftDb[1] / Math.sqrt(3))
  const gainSd = family === null ? 2.5 : (family.coupledSdDb[0] + family.coupledSdDb[1]) / 2
  return [
    ...unknowns.map(({ sd }) => sd),
    driftSd,
    ...new Array<number>(2 * BANDS).fill(30),
    ...settings.flatMap(() => [gainSd, family?.tiltSdDbPerOctave ?? 1, 1.1]),
    ...spots.flatMap(() => [placingSdM(yard), placingSdM(yard)]),
  ]
}

const DB = 10 / Math.LN10

function clipMeasurements(model: Model, plan: ClipPlan): Measurement[] {
  const { yard, leak, unknowns, at, misfitDb } = model
  const setting = at.settings + 3 * model.settings.indexOf(keyOf(plan))
  const spot = model.spots.findIndex((each) => each.spot === plan.spot)
  const order = model.clips.indexOf(plan) / model.clips.length - 0.5
  const heard = powersOf(yard, plan)
  const slopeTo = (other: Powers, step: number) =>
    other.total.map((power, b) => (DB * Math.log(power / heard.total[b]!)) / step)
  const slopes = [
    ...unknowns.map(({ more, step }, i) => ({ at: i, perBand: slopeTo(powersOf(more, plan), step) })),
    ...model.spots[spot]!.moved.map((moved, i) => ({
      at: at.spots + 2 * spot + i,
      perBand: slopeTo(powersOf(yard, { ...plan, spot: moved }), 0.1 * placingSdM(yard)),
    })),
  ]
  return SIGNAL_BANDS.flatMap((band, b) => {
    if (band.midHz * 10 ** 0.05 > 0.45 * plan.recorder.sampleRateHz) return []
    const total = heard.total[b]!
    const share = heard.leak[b]! / total
    const floorShare = heard.floor[b]! / total
    const known: [number, number][] = [
      [at.drift, order * (heard.withAir[b]! / total)],
      [at.source + b, share],
      [at.floor + b, floorShare],
      [setting, 1],
      [setting + 1, Math.log2(band.midHz / 500)],
      [setting + 2, floorShare],
      ...slopes.map(({ at, perBand }): [number, number] => [at, perBand[b]!]),
    ]
    const told = known.filter(([, slope]) => slope !== 0)
    const scatter = levelVariance(band, share, leak.bubbles, plan.durationS)
    return [{ at: told.map(([i]) => i), slope: told.map(([, s]) => s), variance: scatter + (share * misfitDb) ** 2 }]
  })
}

interface Powers {
  readonly leak: readonly number[]
  readonly withAir: readonly number[]
  readonly floor: readonly number[]
  readonly total: readonly number[]
}

/** Mean power in a clip by band: the leak's, all that sounds with the air, the floor's and the sum. */
function powersOf(yard: Yard, plan: ClipPlan): Powers {
  const rise = 10 ** (plan.floorDb / 10)
  const drift = 10 ** (plan.driftDb / 10)
  const floor = SIGNAL_BANDS.map((band) => bandPower(yard.floorPsd, band) * rise + bandPower(yard.selfNoisePsd, band))
  const leak = SIGNAL_BANDS.map(() => 0)
  const withAir = SIGNAL_BANDS.map(() => 0)
  const total = [...floor]
  for (const emitter of yard.emitters) {
    if (emitter.kind !== 'leak' && !isCounted(emitter)) continue
    if (plan.row.air === 'off' && emitter.sounds === 'with air') continue
    for (const [b, heard] of bandsHeard(yard, emitter, plan.spot).entries()) {
      const power = heard * (emitter.sounds === 'with air' ? drift : 1)
      total[b]! += power
      if (emitter.kind === 'leak') leak[b]! += power
      if (emitter.sounds === 'with air') withAir[b]! += power
    }
  }
  return { leak, withAir, floor, total }
}

function bandsHeard(yard: Yard, emitter: Emitter, spot: Spot): number[] {
  const path = hearing(yard.ground, emitter, spot)
  const mean = spectrumOf(emitter)
  return SIGNAL_BANDS.map((band) => {
    let power = 0
    for (let g = band.firstCell; g < band.firstCell + 3; g++) power += mean[g]! * path[g]! * CELL_WIDTH_HZ[g]!
    return power
  })
}

const spectra = new WeakMap<Emitter, Float64Array>()

function spectrumOf(emitter: Emitter): Float64Array {
  const known = spectra.get(emitter) ?? meanPsd(emitter)
  spectra.set(emitter, known)
  return known
}

/** Variance of a measured level, dB²: noise over bandwidth and time, bubbles by their number, 0.4 dB of floor. */
function levelVariance(band: GridBand, share: number, bubbles: BubbleTrain | null, durationS: number): number {
  const noise = 1 / (band.widthHz * durationS)
  const counted = bubbles === null ? 0 : share * share * trainScatter(bubbles, band, durationS)
  return DB * DB * (noise + counted) + ((1 - share) * 0.4) ** 2
}
