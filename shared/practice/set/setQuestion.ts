import type { Clip } from '../../audio/clip'
import { readWav } from '../../audio/readWav'
import { strongestChannel } from '../../audio/strongestChannel'
import { machineOnSound } from '../drills/machineSaid'
import { questionClip } from '../drills/mixedClips'
import type { Question } from '../drills/question'
import type { ClipLabel } from '../library/libraryClip'
import type { SetDrill } from './practiceSet'

/** Loudest sample, full scale 1, and the most that a quiet clip is lifted: as every path to the ears. */
const PEAK = 0.22
const MOST_LIFT = 10 ** (12 / 20)

export interface SetQuestionInput {
  readonly drill: SetDrill
  readonly label: ClipLabel
  readonly wav: Uint8Array
  readonly without: Uint8Array | null
}

/**
 * A clip of a set as a question.
 *
 * @throws {FormatError} a clip that cannot be read.
 */
export function setQuestion({ drill, label, wav, without }: SetQuestionInput): Question {
  const whole = mono(readWav(wav, 'the clip'))
  const floor = without === null ? null : mono(readWav(without, 'the clip without'))
  const peak = [...(floor === null ? [whole] : [whole, floor])].reduce((most, clip) => Math.max(most, peakOf(clip)), 0)
  const lift = peak === 0 ? 1 : Math.min(MOST_LIFT, PEAK / peak)
  const clip = questionClip('', times(whole, lift), floor && times(floor, lift))
  const isYes = drill === 'leak' ? (['leak', 'no leak'] as const) : (['bubbling', 'something else'] as const)
  const truth = drill === 'leak' || label === 'bubbling' ? label : 'something else'
  const machine = machineOnSound(clip.evidence, isYes, truth)
  // How far it stands over the same place without it; not a number where nobody has that.
  const levelDb = floor === null ? Number.NaN : Math.max(0, ...clip.telling.map(({ overFloorDb }) => overFloorDb))
  return { order: { drill, seed: '', levelDb }, truth: label, clips: [clip], gauge: null, machine }
}

function mono(clip: Clip): Clip {
  return { ...clip, channels: [clip.channels[strongestChannel(clip)]!] }
}

function peakOf(clip: Clip): number {
  return clip.channels[0]!.reduce((most, v) => Math.max(most, Math.abs(v)), 0)
}

function times(clip: Clip, factor: number): Clip {
  return { ...clip, channels: [clip.channels[0]!.map((v) => v * factor)] }
}
