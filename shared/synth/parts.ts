import { Random } from '../base/random'
import { type BubbleTrain, drawBubbles, type Gate, slugGate } from './bubbleTrain'
import { ENVELOPE_STEP_S, type Parts } from './clipSounds'
import { nearestCell, onGrid, totalPower } from './grid'
import { hearing } from './hearing'
import { addNuisance } from './nuisances/addNuisance'
import type { NuisanceClip } from './nuisances/nuisanceClip'
import { addHandling, clipDurationS } from './spoils'
import type { ClipPlan, Emitter, Recorder, Yard } from './yard'

/** The parts of a clip; the same every time for the same yard and clip. */
export function clipParts(yard: Yard, plan: ClipPlan): Parts {
  const coupling = couplingPower(plan)
  const recorder = recorderPower(plan.recorder)
  const floor = 10 ** (plan.floorDb / 10)
  const parts: Parts = {
    steadyPsd: yard.floorPsd.map((p, g) => (p * floor * coupling[g]! + yard.selfNoisePsd[g]!) * recorder[g]!),
    swelling: [],
    rings: [],
    tones: [],
    chirps: [],
    voices: [],
  }
  const ground = coupling.map((p, g) => p * recorder[g]!)
  for (const [index, emitter] of yard.emitters.entries())
    if (plan.row.air === 'on' || emitter.sounds === 'always')
      addEmitter(parts, { yard, plan, emitter, index, onWay: ground })
  const disturbed = (name: string): NuisanceClip => ({
    durationS: clipDurationS(plan),
    ambientPower: totalPower(yard.floorPsd),
    ground,
    air: recorder,
    random: stream(yard, plan, name),
  })
  for (const nuisance of plan.nuisances) addNuisance(parts, nuisance, disturbed(nuisance))
  if (plan.spoil === 'handled') addHandling(parts, disturbed('handled'))
  return parts
}

function stream(yard: Yard, plan: ClipPlan, name: string): Random {
  return Random.named(`${yard.seed}/${plan.row.file}`, name)
}

/** Power gain of a setting-down: gain, and tilt about 500 Hz. */
export function couplingPower(plan: ClipPlan): Float64Array {
  return onGrid((f) => 10 ** ((plan.gainDb + plan.tiltDbPerOctave * Math.log2(f / 500)) / 10))
}

/** Power gain of the recorder's high-pass, second order. */
export function recorderPower(recorder: Recorder): Float64Array {
  const corner = recorder.highPassHz
  return onGrid((f) => (corner === null ? 1 : 1 / (1 + (corner / f) ** 4)))
}

interface EmitterInClip {
  readonly yard: Yard
  readonly plan: ClipPlan
  readonly emitter: Emitter
  readonly index: number
  readonly onWay: Float64Array
}

function addEmitter(parts: Parts, at: EmitterInClip): void {
  const { yard, plan, emitter, index } = at
  const random = stream(yard, plan, `emitter ${index}`)
  const gate = emitter.slugs === null ? null : slugGate(emitter.slugs, clipDurationS(plan), random)
  if (gate !== null && gate.length === 0) return
  const drift = emitter.sounds === 'always' ? 0 : plan.driftDb
  for (const site of sites(emitter, random)) {
    const heard = hearing(yard.ground, site.emitter, plan.spot)
    const gain = heard.map((p, g) => p * at.onWay[g]! * site.share * 10 ** (drift / 20))
    addSounds(parts, { plan, emitter: site.emitter, gain, gate, random, drift, ratio: 1 / site.count })
  }
}

interface Site {
  readonly emitter: Emitter
  readonly share: number
  readonly count: number
}

/** One site where the emitter stands; for moving air, a few places on its way with shares drawn anew. */
function sites(emitter: Emitter, random: Random): Site[] {
  if (emitter.movesFromM === null) return [{ emitter, share: 1, count: 1 }]
  const count = random.integer(2, 5)
  return Array.from({ length: count }, () => ({
    emitter: { ...emitter, alongM: random.uniform(emitter.movesFromM!, emitter.alongM), pipeDb: null },
    share: random.exponential(1),
    count,
  }))
}

interface SoundsInClip {
  readonly plan: ClipPlan
  readonly emitter: Emitter
  /** Power gain to the file, with half of the drift in it (the other half is in the rate). */
  readonly gain: Float64Array
  readonly gate: Gate | null
  readonly random: Random
  readonly drift: number
  readonly ratio: number
}

function addSounds(parts: Parts, at: SoundsInClip): void {
  const { plan, emitter, gain, gate, random } = at
  const rest = 10 ** (at.drift / 20)
  if (emitter.bubbles !== null) {
    const train: BubbleTrain = { ...emitter.bubbles, ratePerS: emitter.bubbles.ratePerS * rest * at.ratio }
    parts.rings.push({ rings: drawBubbles(train, clipDurationS(plan), random, gate), gain, areBubbles: true })
  }
  if (emitter.hissPsd !== null) {
    const psd = emitter.hissPsd.map((p, g) => p * gain[g]! * rest * at.ratio)
    if (gate === null) for (let g = 0; g < psd.length; g++) parts.steadyPsd[g]! += psd[g]!
    else parts.swelling.push({ psd, envelope: gateEnvelope(gate, clipDurationS(plan)) })
  }
  for (const tone of emitter.tones) {
    const gainThere = gain[nearestCell(tone.frequencyHz)]!
    parts.tones.push({ frequencyHz: tone.frequencyHz, power: tone.power * gainThere * rest * at.ratio })
  }
}

function gateEnvelope(gate: Gate, durationS: number): Float32Array {
  const envelope = new Float32Array(Math.ceil(durationS / ENVELOPE_STEP_S) + 1)
  const rampS = 0.1
  for (let i = 0; i < envelope.length; i++) {
    const t = i * ENVELOPE_STEP_S
    for (const { fromS, toS } of gate) {
      const open = Math.min(1, (t - fromS) / rampS, (toS - t) / rampS)
      if (open > envelope[i]!) envelope[i] = open
    }
  }
  return envelope
}
