import type { Clip } from '../../audio/clip'
import { bandsOverFloor } from '../../evidence/bandsOverFloor'
import { clipEvidence } from '../../evidence/clipEvidence'
import { bandLevels } from '../../spectrum/bandLevels'
import { renderClip } from '../../synth/renderClip'
import type { ClipPlan, Yard } from '../../synth/yard'
import type { QuestionClip } from './question'

/** One clip of the yard twice: with what is asked for, and the same moment without it. */
export interface ClipPair {
  readonly name: string
  readonly withIt: { readonly yard: Yard; readonly plan: ClipPlan }
  readonly withoutIt: { readonly yard: Yard; readonly plan: ClipPlan }
}

/** Bands in which a level is set, Hz: what reaches an ear through soil. As the yard solves its own levels. */
const LEVEL_FROM_HZ = 95
const LEVEL_TO_HZ = 3300

/** Floor of every question as it is heard, dBFS: the ear's own volume does the rest. Chosen. */
const FLOOR_DBFS = -42
/** Loudest sample, full scale 1: below the ceiling of the limiter, which is for slips. Chosen. */
const PEAK = 0.22

/**
 * Clips of a question at a level: what sounds is the difference of the two renderings, and is put back so strongly that
 * the `judged` pair stands `levelDb` over its floor in its best one-third-octave band. All clips of a question change by
 * the same factors, so that they stay as loud against each other as they were.
 */
export function mixedClips(pairs: readonly ClipPair[], judged: number, levelDb: number): QuestionClip[] {
  const rendered = pairs.map(({ name, withIt, withoutIt }) => {
    const floor = samplesOf(withoutIt)
    const whole = samplesOf(withIt)
    return { name, floor, signal: whole.map((v, n) => v - floor[n]!), rateHz: withIt.plan.recorder.sampleRateHz }
  })
  const { signal, floor, rateHz } = rendered[judged]!
  const gain = 10 ** ((levelDb - bestOverFloorDb(signal, floor, rateHz)) / 20)
  const scale = heardScale(rendered, gain)
  return rendered.map((each) => {
    const without = clipOf(
      each.floor.map((v) => v * scale),
      each.rateHz,
    )
    const clip = clipOf(
      each.floor.map((v, n) => (v + gain * each.signal[n]!) * scale),
      each.rateHz,
    )
    return questionClip(each.name, clip, without)
  })
}

/** A clip with what it says, and where it stands over the same without its source. */
export function questionClip(name: string, clip: Clip, without: Clip | null): QuestionClip {
  const evidence = clipEvidence(clip)
  const telling = without === null ? [] : bandsOverFloor([evidence], [clipEvidence(without)], [])
  return { name, clip, without, evidence, telling }
}

/** The most that a band of one sound stands over the same band of another, dB. */
export function bestOverFloorDb(signal: Float32Array, floor: Float32Array, sampleRateHz: number): number {
  const floors = bandLevels(floor, sampleRateHz, [])
  const over = bandLevels(signal, sampleRateHz, []).flatMap(({ midHz, levelDbFs }, i) => {
    const floorDb = floors[i]!.levelDbFs
    const counts = midHz > LEVEL_FROM_HZ && midHz < LEVEL_TO_HZ
    return counts && levelDbFs !== null && floorDb !== null ? [levelDbFs - floorDb] : []
  })
  return Math.max(...over)
}

function samplesOf({ yard, plan }: ClipPair['withIt']): Float32Array {
  return renderClip(yard, plan).channels[0]!
}

function heardScale(rendered: readonly { floor: Float32Array; signal: Float32Array }[], gain: number): number {
  let power = 0
  let peak = 0
  let count = 0
  for (const { floor, signal } of rendered) {
    for (let n = 0; n < floor.length; n++) {
      power += floor[n]! ** 2
      peak = Math.max(peak, Math.abs(floor[n]! + gain * signal[n]!))
    }
    count += floor.length
  }
  return Math.min(10 ** (FLOOR_DBFS / 20) / Math.sqrt(power / count), PEAK / peak)
}

function clipOf(samples: Float32Array, sampleRateHz: number): Clip {
  return { channels: [samples], sampleRateHz, encoding: { kind: 'float', bits: 32 }, problems: [] }
}
