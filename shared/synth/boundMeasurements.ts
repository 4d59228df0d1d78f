import { trainCovariance } from './bubbleTrain'
import { type ClipPowers, clipPowers } from './clipPowers'
import { familyNamed } from './families'
import { SIGNAL_BANDS } from './grid'
import type { Spot } from './ground'
import type { ClipPlan, Emitter, Yard } from './yard'
import { isCounted, type Unknown, yardUnknowns } from './yardUnknowns'

/** The levels of a clip, band by band, as measurements that scatter together. */
export interface LevelMeasurements {
  readonly file: string
  readonly midHz: readonly number[]
  /** Where everything is as in the truth, before the recorder, dB. */
  readonly expectedDb: readonly number[]
  /** Parameters that any of the levels depends on. */
  readonly at: readonly number[]
  /** Change of each level with each of them. */
  readonly slopes: readonly (readonly number[])[]
  /** Of the levels, row-major, dB². */
  readonly covariance: Float64Array
}

/** Every level of a sweep and what it depends on. */
export interface BoundMeasurements {
  readonly clips: readonly LevelMeasurements[]
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
  return { clips: usable.map((plan) => clipMeasurements(model, plan)), priorSd: priorSds(model) }
}

/** Air on its way, which sounds elsewhere in every clip, and sources nobody is told of: not to be made linear. */
function hidesSources({ emitters, told }: Yard): boolean {
  const count = (kind: Emitter['kind']) => emitters.filter((emitter) => emitter.kind === kind).length
  const toldInlets = told.airInletM === null ? 0 : 1
  return count('moving') > 0 || count('inlet') > toldInlets || count('noise') > told.noises.length
}

/** The yard, what is unknown of it, and the order of the parameters: place, unknowns, drift and so on. */
interface Model {
  readonly yard: Yard
  readonly leak: Emitter
  /** Relative covariance of the bubbles' power in all bands over a second, at the leak's own rate. */
  readonly bubblesInOneS: Float64Array | null
  readonly misfitDb: number
  readonly clips: readonly ClipPlan[]
  readonly unknowns: readonly (Unknown & { readonly more: Yard })[]
  readonly settings: readonly string[]
  /** Every spot, and the same a little further along and across. */
  readonly spots: readonly { readonly spot: Spot; readonly moved: readonly Spot[] }[]
  /** Where each kind of parameter begins. */
  readonly at: {
    readonly drift: number
    readonly self: number
    readonly source: number
    readonly floor: number
    readonly others: number
    readonly settings: number
    readonly clips: number
    readonly spots: number
  }
}

const BANDS = SIGNAL_BANDS.length
/** Numbers a setting-down has of its own: gain, tilt, level of the floor, level of the air. */
const OWN = 4
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
  const source = drift + 2
  const ofSettings = source + (2 + yard.emitters.filter(isCounted).length) * BANDS
  const ofClips = ofSettings + OWN * settings.length
  return {
    yard,
    leak,
    bubblesInOneS: leak.bubbles && trainCovariance(leak.bubbles, SIGNAL_BANDS, 1),
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
      self: drift + 1,
      source,
      floor: source + BANDS,
      others: source + 2 * BANDS,
      settings: ofSettings,
      clips: ofClips,
      spots: ofClips + clips.length,
    },
  }
}

/** Spread of a point from its mark, m: the lesser of 2 cm and 3 % of the spacing, as it was drawn. */
function placingSdM({ truth }: Yard): number {
  return Math.min(0.02, 0.03 * truth.spacingM)
}

/** Nothing to speak of is known of a spectrum, dB. */
const SPECTRUM_SD_DB = 30
/** As drawn: self-noise evenly over 12 dB; a setting-down's floor and air; a clip's floor against its setting-down's, dB. */
const SELF_SD_DB = 12 / Math.sqrt(12)
const FLOOR_SD_DB = 1
const AIR_SD_DB = 0.3
const CLIP_FLOOR_SD_DB = 0.4

function priorSds({ yard, unknowns, settings, spots, clips, at }: Model): number[] {
  const family = familyNamed(yard.family)
  const driftSd = family === null ? 2 : Math.max(0.3, family.driftDb[1] / Math.sqrt(3))
  const gainSd = family === null ? 2.5 : (family.coupledSdDb[0] + family.coupledSdDb[1]) / 2
  return [
    ...unknowns.map(({ sd }) => sd),
    driftSd,
    SELF_SD_DB,
    ...new Array<number>(at.settings - at.source).fill(SPECTRUM_SD_DB),
    ...settings.flatMap(() => [gainSd, family?.tiltSdDbPerOctave ?? 1, FLOOR_SD_DB, AIR_SD_DB]),
    ...clips.map(() => CLIP_FLOOR_SD_DB),
    ...spots.flatMap(() => [placingSdM(yard), placingSdM(yard)]),
  ]
}

const DB = 10 / Math.LN10

function clipMeasurements(model: Model, plan: ClipPlan): LevelMeasurements {
  const bands = SIGNAL_BANDS.flatMap(({ midHz }, b) =>
    midHz * 10 ** 0.05 > 0.45 * plan.recorder.sampleRateHz ? [] : [b],
  )
  const powers = clipPowers(model.yard, plan)
  const slopes = clipSlopes(model, plan, powers)
  const told = slopes.filter(({ perBand }) => bands.some((b) => perBand[b] !== 0))
  return {
    file: plan.row.file,
    midHz: bands.map((b) => SIGNAL_BANDS[b]!.midHz),
    expectedDb: bands.map((b) => DB * Math.log(powers.total[b]!)),
    at: told.map(({ at }) => at),
    slopes: bands.map((b) => told.map(({ perBand }) => perBand[b]!)),
    covariance: levelCovariance(model, plan, powers, bands),
  }
}

interface Slope {
  readonly at: number
  readonly perBand: readonly number[]
}

/** How the levels of a clip change with every parameter, dB for one of its unit. */
function clipSlopes(model: Model, plan: ClipPlan, powers: ClipPowers): Slope[] {
  const { yard, unknowns, at } = model
  const { total, self } = powers
  const setting = at.settings + OWN * model.settings.indexOf(keyOf(plan))
  const spot = model.spots.findIndex((each) => each.spot === plan.spot)
  const order = model.clips.indexOf(plan) / model.clips.length - 0.5
  const share = (part: readonly number[]) => part.map((power, b) => power / total[b]!)
  const slopeTo = (other: ClipPowers, step: number) =>
    other.total.map((power, b) => (DB * Math.log(power / total[b]!)) / step)
  const inOneBand = (first: number, part: readonly number[]): Slope[] =>
    share(part).map((slope, b) => ({ at: first + b, perBand: SIGNAL_BANDS.map((_, i) => (i === b ? slope : 0)) }))
  const coupled = share(self).map((ofSelf) => 1 - ofSelf)
  const withAir = share(powers.withAir)
  const floor = share(powers.ambient)
  return [
    ...unknowns.map(({ more, step }, i) => ({ at: i, perBand: slopeTo(clipPowers(more, plan), step) })),
    { at: at.drift, perBand: withAir.map((slope) => order * slope) },
    { at: at.self, perBand: share(self) },
    ...inOneBand(at.source, powers.leak),
    ...inOneBand(at.floor, powers.ambient),
    ...powers.others.flatMap((part, i) => inOneBand(at.others + i * BANDS, part)),
    { at: setting, perBand: coupled },
    { at: setting + 1, perBand: coupled.map((slope, b) => slope * Math.log2(SIGNAL_BANDS[b]!.midHz / 500)) },
    { at: setting + 2, perBand: floor },
    { at: setting + 3, perBand: withAir },
    { at: at.clips + model.clips.indexOf(plan), perBand: floor },
    ...model.spots[spot]!.moved.map((moved, i) => ({
      at: at.spots + 2 * spot + i,
      perBand: slopeTo(clipPowers(yard, { ...plan, spot: moved }), 0.1 * placingSdM(yard)),
    })),
  ]
}

/**
 * How levels scatter, dB²: noise over bandwidth and time, what is noise beating with what rings, bubbles by their number,
 * and what an estimate's law misses.
 */
function levelCovariance(
  { bubblesInOneS, misfitDb }: Model,
  plan: ClipPlan,
  { total, leak: leakPower, bubbles }: ClipPowers,
  bands: readonly number[],
): Float64Array {
  const n = bands.length
  // Half of the drift is in the rate.
  const bubblingS = plan.durationS * 10 ** (plan.driftDb / 20)
  const covariance = new Float64Array(n * n)
  for (const [i, b] of bands.entries()) {
    const ringing = bubbles[b]! / total[b]!
    for (const [j, c] of bands.entries())
      if (bubblesInOneS !== null) {
        const counted = bubblesInOneS[b * BANDS + c]! / bubblingS
        covariance[i * n + j] = DB * DB * ringing * (bubbles[c]! / total[c]!) * counted
      }
    const noise = (1 - ringing * ringing) / (SIGNAL_BANDS[b]!.widthHz * plan.durationS)
    covariance[i * n + i]! += DB * DB * noise + ((leakPower[b]! / total[b]!) * misfitDb) ** 2
  }
  return covariance
}
