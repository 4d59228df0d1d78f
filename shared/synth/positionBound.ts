import type { BubbleTrain } from './bubbleTrain'
import { trainScatter } from './bubbleTrain'
import { meanPsd } from './drawEmitters'
import { familyNamed } from './families'
import { bandPower, type GridBand, SIGNAL_BANDS } from './grid'
import type { Ground, GroundStretch, Spot } from './ground'
import { hearing } from './hearing'
import { informationBound, type Measurement } from './informationBound'
import type { ClipPlan, Emitter, Yard } from './yard'

/**
 * How exactly the place of a yard's leak can be told from its band levels at best, as a standard deviation, m.
 *
 * The laws of the yard are taken as known. Unknown are: the leak's and the floor's level in every band; gain, tilt and
 * floor of every setting-down; the drift; absorption, slant and speed of the soil, depth, and the level along the
 * pipe: each with the spread the yard was drawn with. Levels scatter as noise and countable bubbles do.
 * Other sources count as known. Rings by the piece are not used.
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
  const layout = layoutOf(usable)
  const measurements = usable.flatMap((plan) => clipMeasurements(yard, leak, plan, { ...layout, misfitDb }))
  return informationBound(measurements, priors(yard, layout))
}

/** Changes tried on the ground: each returns the yard's ground and leak with one thing a little different. */
const GROUND_STEPS: readonly {
  readonly sd: number
  readonly step: number
  readonly changed: (ground: Ground, leak: Emitter, by: number) => readonly [Ground, Emitter]
}[] = [
  {
    sd: 0.6,
    step: 0.05,
    changed: (g, l, by) => [
      withSoil(g, (m) => ({ ...m, absorptionDbPerCmKhz: m.absorptionDbPerCmKhz * Math.exp(by) })),
      l,
    ],
  },
  { sd: 0.29, step: 0.05, changed: (g, l, by) => [withSoil(g, (m) => ({ ...m, obliquity: m.obliquity + by })), l] },
  {
    sd: 0.3,
    step: 0.05,
    changed: (g, l, by) => [withSoil(g, (m) => ({ ...m, speedMPerS: m.speedMPerS * Math.exp(by) })), l],
  },
  { sd: 0.06, step: 0.02, changed: (g, l, by) => [g, { ...l, depthM: l.depthM * Math.exp(by) }] },
  { sd: 3.5, step: 0.5, changed: (g, l, by) => [g, { ...l, pipeDb: l.pipeDb === null ? null : l.pipeDb + by }] },
]

function withSoil(ground: Ground, change: (medium: GroundStretch['medium']) => GroundStretch['medium']): Ground {
  return { ...ground, stretches: ground.stretches.map((s) => ({ ...s, medium: change(s.medium) })) }
}

interface Layout {
  readonly misfitDb: number
  readonly settings: readonly string[]
  readonly places: readonly ClipPlan[]
}

const BANDS = SIGNAL_BANDS.length
const GROUND_AT = 1
const DRIFT_AT = GROUND_AT + GROUND_STEPS.length
const SOURCE_AT = DRIFT_AT + 1
const FLOOR_AT = SOURCE_AT + BANDS
const SETTING_AT = FLOOR_AT + BANDS

const keyOf = ({ row }: ClipPlan) => (row.sharedTake ? `${row.point}/${row.take}` : row.file)

function layoutOf(places: readonly ClipPlan[]): Omit<Layout, 'misfitDb'> {
  return { settings: [...new Set(places.map(keyOf))], places }
}

function priors(yard: Yard, { settings }: Pick<Layout, 'settings'>): number[] {
  const family = familyNamed(yard.family)
  const driftSd = family === null ? 2 : Math.max(0.3, family.driftDb[1] / Math.sqrt(3))
  const gainSd = family === null ? 2.5 : (family.coupledSdDb[0] + family.coupledSdDb[1]) / 2
  const each = settings.flatMap(() => [gainSd, family?.tiltSdDbPerOctave ?? 1, 1.1])
  const level = new Array<number>(2 * BANDS).fill(30)
  return [Number.POSITIVE_INFINITY, ...GROUND_STEPS.map((step) => step.sd), driftSd, ...level, ...each]
}

const DB = 10 / Math.LN10

function clipMeasurements(yard: Yard, leak: Emitter, plan: ClipPlan, layout: Layout): Measurement[] {
  const setting = SETTING_AT + 3 * layout.settings.indexOf(keyOf(plan))
  const order = layout.places.indexOf(plan) / layout.places.length - 0.5
  const on = plan.row.air === 'on'
  const power = leakPower(yard.ground, leak, plan.spot)
  const slopes = on ? hearingSlopes(yard.ground, leak, plan.spot) : []
  const others = otherPower(yard, plan)
  return SIGNAL_BANDS.flatMap((band, b) => {
    if (band.midHz * 10 ** 0.05 > 0.45 * plan.recorder.sampleRateHz) return []
    const signal = on ? power[b]! * 10 ** (plan.driftDb / 10) : 0
    const floor = others[b]!
    const share = signal / (signal + floor)
    const tilt = Math.log2(band.midHz / 500)
    const at = [FLOOR_AT + b, setting, setting + 1, setting + 2]
    const slope = [1 - share, 1, tilt, 1 - share]
    if (share > 0) {
      at.push(...slopes.keys(), DRIFT_AT, SOURCE_AT + b)
      slope.push(...slopes.map((perBand) => share * perBand[b]!), share * order, share)
    }
    const scatter = levelVariance(band, share, leak.bubbles, plan.durationS)
    return [{ at, slope, variance: scatter + (share * layout.misfitDb) ** 2 }]
  })
}

function leakPower(ground: Ground, leak: Emitter, spot: Spot): number[] {
  const heard = hearing(ground, leak, spot)
  const psd = meanPsd(leak).map((p, g) => p * heard[g]!)
  return SIGNAL_BANDS.map((band) => bandPower(psd, band))
}

/** Change of level in every band, dB: by place along, then by each change of the ground. */
function hearingSlopes(ground: Ground, leak: Emitter, spot: Spot): number[][] {
  const stepM = 0.02 * leak.depthM
  const level = (g: Ground, l: Emitter) => leakPower(g, l, spot).map((power) => DB * Math.log(power))
  const slope = (up: number[], down: number[], width: number) => up.map((v, b) => (v - down[b]!) / width)
  const alongside = (byM: number) => level(ground, { ...leak, alongM: leak.alongM + byM })
  return [
    slope(alongside(stepM), alongside(-stepM), 2 * stepM),
    ...GROUND_STEPS.map(({ step, changed }) =>
      slope(level(...changed(ground, leak, step)), level(...changed(ground, leak, -step)), 2 * step),
    ),
  ]
}

/** Floor and every other source at a clip's place, by band. */
function otherPower(yard: Yard, plan: ClipPlan): number[] {
  const psd = yard.floorPsd.map((p, g) => p * 10 ** (plan.floorDb / 10) + yard.selfNoisePsd[g]!)
  for (const emitter of yard.emitters) {
    if (emitter.kind === 'leak' || emitter.kind === 'moving') continue
    if (plan.row.air === 'off' && emitter.sounds === 'with air') continue
    const heard = hearing(yard.ground, emitter, plan.spot)
    const mean = meanPsd(emitter)
    for (let g = 0; g < psd.length; g++) psd[g]! += mean[g]! * heard[g]!
  }
  return SIGNAL_BANDS.map((band) => bandPower(psd, band))
}

/** Variance of a measured level, dB²: noise over bandwidth and time, bubbles by their number, 0.4 dB of floor. */
function levelVariance(band: GridBand, share: number, bubbles: BubbleTrain | null, durationS: number): number {
  const noise = 1 / (band.widthHz * durationS)
  const counted = bubbles === null ? 0 : share * share * trainScatter(bubbles, band, durationS)
  return DB * DB * (noise + counted) + ((1 - share) * 0.4) ** 2
}
