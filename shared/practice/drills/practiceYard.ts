import type { Random } from '../../base/random'
import { drawMachine } from '../../synth/drawEmitters'
import { drawYard } from '../../synth/drawYard'
import { familyNamed } from '../../synth/families'
import type { ClipPlan, Nuisance, Yard } from '../../synth/yard'
import type { ClipPair } from './mixedClips'
import type { SoundKind } from './question'

/** Length of a clip, s: long enough for a gurgle, short enough to be heard often. Chosen. */
const CLIP_S = 4

/** What the yard is drawn with; levels are set afterwards, clip by clip. */
const DRAWN = {
  ...familyNamed('plain')!,
  name: 'practice',
  spacingOverDepth: [1.2, 2],
  overFloorDb: [20, 20],
  inletShare: 0,
  nuisances: [],
  nuisanceShare: 0,
  driftDb: [0, 0],
  toldPumpShare: 0,
  airOffAll: 0,
  airOffSome: 0,
} as const

/** An invented yard with one leak, and who stands where. */
export interface PracticeYard {
  readonly yard: Yard
  /** One for each point, by number: air on, nothing beside the leak. */
  readonly plans: readonly ClipPlan[]
  readonly leakM: number
  readonly spacingM: number
  /** Index of the plan nearest to the leak. */
  readonly nearest: number
}

export function practiceYard(seed: string): PracticeYard {
  const yard = drawYard(DRAWN, seed)
  const points = yard.clips.filter(({ row }) => row.take === 1 && row.air === 'on')
  const plans = [...points].sort((a, b) => a.row.point - b.row.point).map(plainPlan)
  const leakM = yard.truth.leakAlongM[0]!
  const away = plans.map(({ row }) => Math.abs(row.alongM - leakM))
  return { yard, plans, leakM, spacingM: yard.truth.spacingM, nearest: away.indexOf(Math.min(...away)) }
}

function plainPlan(plan: ClipPlan): ClipPlan {
  const recorder = { ...plan.recorder, encoding: { kind: 'float', bits: 32 }, highPassHz: null } as const
  return { ...plan, durationS: CLIP_S, recorder, nuisances: [], spoil: null }
}

/** The air let out: the same moment, and whatever else sounds there, without the leak. */
export function withoutAir(plan: ClipPlan): ClipPlan {
  return { ...plan, row: { ...plan.row, air: 'off' } }
}

const NUISANCE_OF: Readonly<Record<Exclude<SoundKind, 'bubbling' | 'pump'>, Nuisance>> = {
  footstep: 'footsteps',
  wind: 'gusts',
  rain: 'rain',
  voice: 'voices',
}

/** One kind of sound at one point, and the same moment without it. */
export function soundPair({ yard, plans, nearest }: PracticeYard, kind: SoundKind, random: Random): ClipPair {
  const plan = plans[nearest]!
  const quiet = { yard, plan: withoutAir(plan) }
  if (kind === 'bubbling') return { name: '', withIt: { yard, plan }, withoutIt: quiet }
  if (kind !== 'pump') {
    const heard = { ...withoutAir(plan), nuisances: [NUISANCE_OF[kind]] }
    return { name: '', withIt: { yard, plan: heard }, withoutIt: quiet }
  }
  const pump = drawMachine(plan.row.alongM, 1.5, random)
  return { name: '', withIt: { yard: { ...yard, emitters: [pump] }, plan: withoutAir(plan) }, withoutIt: quiet }
}
