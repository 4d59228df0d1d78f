import { type Family, familyNamed, type Range } from './families'
import type { GroundStretch, PipeFitting } from './ground'
import type { Emitter, Yard } from './yard'

/** Something of a yard that nobody is told, with the spread it was drawn with, and the yard with a little more of it. */
export interface Unknown {
  readonly sd: number
  /** Change by which a slope is measured, in the unit of `sd`. */
  readonly step: number
  readonly changed: (yard: Yard, by: number) => Yard
}

/** What is not told of a yard's ground, pipe and known sources, beside the leak's place and the spectra of all sources. */
export function yardUnknowns(yard: Yard): Unknown[] {
  const family = familyNamed(yard.family)
  return [
    ...soilUnknowns(),
    ...yard.ground.stretches.flatMap((_, index) => stretchUnknowns(yard, index)),
    ...leakUnknowns(family),
    ...pipeUnknowns(family),
    ...yard.ground.pipe.fittings.flatMap((_, index) => fittingUnknowns(index)),
    ...yard.emitters.flatMap((emitter, index) => (isCounted(emitter) ? sourceUnknowns(emitter, index) : [])),
  ]
}

/** Inlet and machines; air that moves sounds elsewhere in every clip and is left out. */
export function isCounted(emitter: Emitter): boolean {
  return emitter.kind === 'inlet' || emitter.kind === 'noise'
}

/** Standard deviation of an even draw. */
function spreadOf([low, high]: Range): number {
  return (high - low) / Math.sqrt(12)
}

type Change<T> = (of: T, by: number) => T

/** Soil that all stretches share. */
function soilUnknowns(): Unknown[] {
  const soil = (sd: number, change: Change<GroundStretch['medium']>) => ({
    sd,
    step: 0.05,
    changed: (yard: Yard, by: number) =>
      withStretches(yard, (stretch) => ({ ...stretch, medium: change(stretch.medium, by) })),
  })
  return [
    soil(0.6, (m, by) => ({ ...m, absorptionDbPerCmKhz: m.absorptionDbPerCmKhz * Math.exp(by) })),
    soil(0.29, (m, by) => ({ ...m, obliquity: m.obliquity + by })),
    soil(0.3, (m, by) => ({ ...m, speedMPerS: m.speedMPerS * Math.exp(by) })),
    soil(0.14, (m, by) => ({ ...m, surfaceShare: m.surfaceShare + by })),
    soil(0.17, (m, by) => ({ ...m, coherence: m.coherence + by })),
  ]
}

/** Spread of the logarithm of absorption from stretch to stretch. */
const STRETCH_ABSORPTION_SD = 0.2

function stretchUnknowns({ ground }: Yard, index: number): Unknown[] {
  const { cover, plate } = ground.stretches[index]!
  const own = (sd: number, step: number, change: Change<GroundStretch>) => ({
    sd,
    step,
    changed: (yard: Yard, by: number) => withStretches(yard, (s, i) => (i === index ? change(s, by) : s)),
  })
  const coverSd = spreadOf(cover === 'gravel' || cover === 'pavers' ? [2, 6] : [0, 2])
  const absorption = (m: GroundStretch['medium'], by: number) => m.absorptionDbPerCmKhz * Math.exp(by)
  const list = [
    own(coverSd, 0.1, (s, by) => ({ ...s, coverLossDbPerKhz: s.coverLossDbPerKhz + by })),
    own(STRETCH_ABSORPTION_SD, 0.05, (s, by) => ({
      ...s,
      medium: { ...s.medium, absorptionDbPerCmKhz: absorption(s.medium, by) },
    })),
  ]
  if (plate === null) return list
  const slab = (sd: number, step: number, change: Change<NonNullable<GroundStretch['plate']>>) =>
    own(sd, step, (s, by) => ({ ...s, plate: s.plate && change(s.plate, by) }))
  return [
    ...list,
    slab(0.52, 0.05, (p, by) => ({ ...p, lossFactor: p.lossFactor * Math.exp(by) })),
    slab(spreadOf([-9, 0]), 0.3, (p, by) => ({ ...p, sidewaysDb: p.sidewaysDb + by })),
    slab(0.33, 0.05, (p, by) => ({ ...p, resonanceHz: p.resonanceHz * Math.exp(by) })),
    slab(0.28, 0.05, (p, by) => ({ ...p, resonanceQuality: p.resonanceQuality * Math.exp(by) })),
  ]
}

/**
 * Depth of leak and pipe, told to within a tenth, in some families a quarter wrong; and what comes along the pipe, which
 * is one number for leak and inlet.
 */
function leakUnknowns(family: Family | null): Unknown[] {
  const told = family?.toldDepth ?? [1]
  const wrong = told.reduce((sum, factor) => sum + Math.log(factor) ** 2, 0) / told.length
  return [
    {
      sd: Math.hypot(0.06, Math.sqrt(wrong)),
      step: 0.02,
      changed: (yard, by) => {
        const pipe = withStretches(yard, (stretch) => ({ ...stretch, depthM: stretch.depthM * Math.exp(by) }))
        return withEmitters(pipe, (emitter) =>
          emitter.kind === 'leak' ? { ...emitter, depthM: emitter.depthM * Math.exp(by) } : emitter,
        )
      },
    },
    {
      sd: spreadOf(family?.pipeDb ?? [-30, -18]),
      step: 0.5,
      changed: (yard, by) =>
        withEmitters(yard, (emitter) =>
          emitter.pipeDb === null ? emitter : { ...emitter, pipeDb: emitter.pipeDb + by },
        ),
    },
  ]
}

function pipeUnknowns(family: Family | null): Unknown[] {
  const pipe = (sd: number, change: Change<Yard['ground']['pipe']>) => ({
    sd,
    step: 0.1,
    changed: (yard: Yard, by: number) => withGround(yard, { ...yard.ground, pipe: change(yard.ground.pipe, by) }),
  })
  return [
    pipe(spreadOf([0.3, 1.5]), (p, by) => ({ ...p, lossDbPerM: p.lossDbPerM + by })),
    pipe(spreadOf(family?.pipeLossDbPerMKhz ?? [4, 12]), (p, by) => ({
      ...p,
      lossDbPerMKhz: p.lossDbPerMKhz + by,
    })),
  ]
}

/**
 * No fitting is told of: what it sends out and what it takes. Spreads of the draws. Where it sits is taken as known, though
 * only bends show on a route: a place unknown by metres cannot be made linear, and knowing it can only lower the bound.
 */
function fittingUnknowns(index: number): Unknown[] {
  const fitting = (sd: number, change: Change<PipeFitting>) => ({
    sd,
    step: 0.05,
    changed: (yard: Yard, by: number) => {
      const { pipe } = yard.ground
      const fittings = pipe.fittings.map((each, i) => (i === index ? change(each, by) : each))
      return withGround(yard, { ...yard.ground, pipe: { ...pipe, fittings } })
    },
  })
  return [
    fitting(spreadOf([0.2, 1.5]), (each, by) => ({ ...each, radiatesLikeM: each.radiatesLikeM + by })),
    fitting(spreadOf([0.5, 3]), (each, by) => ({ ...each, lossDb: each.lossDb + by })),
  ]
}

/** How far a known source stands beside the line, and how deep an inlet is. Spreads of the draws. */
function sourceUnknowns({ kind }: Emitter, index: number): Unknown[] {
  const source = (sd: number, step: number, change: Change<Emitter>) => ({
    sd,
    step,
    changed: (yard: Yard, by: number) =>
      withEmitters(yard, (emitter, i) => (i === index ? change(emitter, by) : emitter)),
  })
  const besideM = spreadOf(kind === 'inlet' ? [-0.3, 0.3] : [1, 3])
  const beside = source(besideM, 0.02, (emitter, by) => ({ ...emitter, offsetM: emitter.offsetM + by }))
  if (kind === 'noise') return [beside]
  const depthSd = spreadOf([Math.log(0.05), Math.log(0.2)])
  return [beside, source(depthSd, 0.05, (emitter, by) => ({ ...emitter, depthM: emitter.depthM * Math.exp(by) }))]
}

function withStretches(yard: Yard, change: (stretch: GroundStretch, index: number) => GroundStretch): Yard {
  return withGround(yard, { ...yard.ground, stretches: yard.ground.stretches.map(change) })
}

/** What is heard of an emitter is kept by emitter, so that other ground asks for emitters of its own. */
function withGround(yard: Yard, ground: Yard['ground']): Yard {
  return { ...yard, ground, emitters: yard.emitters.map((emitter) => ({ ...emitter })) }
}

function withEmitters(yard: Yard, change: (emitter: Emitter, index: number) => Emitter): Yard {
  return { ...yard, emitters: yard.emitters.map(change) }
}
