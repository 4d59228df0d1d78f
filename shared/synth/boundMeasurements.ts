import { type BubbleTrain, trainScatter } from './bubbleTrain'
import { type ClipPowers, clipPowers } from './clipPowers'
import { familyNamed } from './families'
import { type GridBand, SIGNAL_BANDS } from './grid'
import type { Spot } from './ground'
import type { Measurement } from './informationBound'
import type { ClipPlan, Emitter, Yard } from './yard'
import { isCounted, type Unknown, yardUnknowns } from './yardUnknowns'

/** The level of a band of a clip as a measurement. */
export interface LevelMeasurement extends Measurement {
  readonly file: string
  readonly midHz: number
  /** Where everything is as in the truth, before the setting-down's gain and tilt and the recorder, dB. */
  readonly expectedDb: number
}

/** Every level of a sweep and what it depends on. */
export interface BoundMeasurements {
  readonly measurements: readonly LevelMeasurement[]
  /** Spread of every parameter: place along (m, nothing known), then the others. */
  readonly priorSd: readonly number[]
}

/**
 * The levels of a yard's sweep, made linear at the truth: how each changes with the leak's place and with everything
 * else that is unknown. See `positionBound`.
 *
 * @returns `null` where `positionBound` is.
 */
export function boundMeasurements(yard: Yard, misfitDb: number): BoundMeasurements | null {
  const leaks = yard.emitters.filter((emitter) => emitter.kind === 'leak')
  const leak = leaks[0]
  const usable = yard.clips.filter((plan) => plan.spoil === null)
  const shifted = yard.truth.exitAlongM[0] !== yard.truth.leakAlongM[0]
  if (leak === undefined || leaks.length > 1 || leak.slugs !== null || shifted) return null
  if (usable.some((plan) => plan.recorder.ridesGain)) return null
  if (hidesSources(yard) || usable.filter(({ nuisances }) => nuisances.length > 0).length > usable.length / 4)
    return null
  const model = modelOf(yard, leak, usable, misfitDb)
  return { measurements: usable.flatMap((plan) => clipMeasurements(model, plan)), priorSd: priorSds(model) }
}

/** Air on its way, which sounds elsewhere in every clip, and sources nobody is told of: not to be made linear. */
function hidesSources({ emitters, told }: Yard): boolean {
  const count = (kind: Emitter['kind']) => emitters.filter((emitter) => emitter.kind === kind).length
  const toldInlets = told.airInletM === null ? 0 : 1
  return count('moving') > 0 || count('inlet') > toldInlets || count('noise') > told.noises.length
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
    readonly others: number
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
  const spectra = 2 + yard.emitters.filter(isCounted).length
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
      others: drift + 1 + 2 * BANDS,
      settings: drift + 1 + spectra * BANDS,
      spots: drift + 1 + spectra * BANDS + 3 * settings.length,
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
    ...new Array<number>((2 + yard.emitters.filter(isCounted).length) * BANDS).fill(30),
    ...settings.flatMap(() => [gainSd, family?.tiltSdDbPerOctave ?? 1, 1.1]),
    ...spots.flatMap(() => [placingSdM(yard), placingSdM(yard)]),
  ]
}

const DB = 10 / Math.LN10

function clipMeasurements(model: Model, plan: ClipPlan): LevelMeasurement[] {
  const { yard, leak, unknowns, at, misfitDb } = model
  const setting = at.settings + 3 * model.settings.indexOf(keyOf(plan))
  const spot = model.spots.findIndex((each) => each.spot === plan.spot)
  const order = model.clips.indexOf(plan) / model.clips.length - 0.5
  const heard = clipPowers(yard, plan)
  const slopeTo = (other: ClipPowers, step: number) =>
    other.total.map((power, b) => (DB * Math.log(power / heard.total[b]!)) / step)
  const slopes = [
    ...unknowns.map(({ more, step }, i) => ({ at: i, perBand: slopeTo(clipPowers(more, plan), step) })),
    ...model.spots[spot]!.moved.map((moved, i) => ({
      at: at.spots + 2 * spot + i,
      perBand: slopeTo(clipPowers(yard, { ...plan, spot: moved }), 0.1 * placingSdM(yard)),
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
      ...heard.others.map((powers, i): [number, number] => [at.others + i * BANDS + b, powers[b]! / total]),
      [setting, 1],
      [setting + 1, Math.log2(band.midHz / 500)],
      [setting + 2, floorShare],
      ...slopes.map(({ at, perBand }): [number, number] => [at, perBand[b]!]),
    ]
    const told = known.filter(([, slope]) => slope !== 0)
    const scatter = levelVariance(band, share, leak.bubbles, plan.durationS)
    return [
      {
        file: plan.row.file,
        midHz: band.midHz,
        expectedDb: DB * Math.log(total),
        at: told.map(([i]) => i),
        slope: told.map(([, slope]) => slope),
        variance: scatter + (share * misfitDb) ** 2,
      },
    ]
  })
}

/** Variance of a measured level, dB²: noise over bandwidth and time, bubbles by their number, 0.4 dB of floor. */
function levelVariance(band: GridBand, share: number, bubbles: BubbleTrain | null, durationS: number): number {
  const noise = 1 / (band.widthHz * durationS)
  const counted = bubbles === null ? 0 : share * share * trainScatter(bubbles, band, durationS)
  return DB * DB * (noise + counted) + ((1 - share) * 0.4) ** 2
}
