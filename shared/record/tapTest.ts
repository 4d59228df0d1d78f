import { quantile } from '../base/statistics'
import type { HeardBlock } from './settling'

/** What the two halves of the test gave: blocks of about 20 ms while the ground microphone was tapped, then the phone. */
export interface TapTestInput {
  readonly microphone: readonly HeardBlock[]
  readonly phone: readonly HeardBlock[]
}

/**
 * `ground microphone`: it is the one that is heard. `phone`: the phone's own is. `nothing`: no tap came through.
 * `unclear`: both were about as loud, or too few taps.
 */
export type TapVerdict = 'ground microphone' | 'phone' | 'nothing' | 'unclear'

export interface TapTest {
  readonly verdict: TapVerdict
  readonly microphoneTaps: number
  readonly phoneTaps: number
  /** By how much the taps on the ground microphone were louder, dB; `null` unless both were heard. */
  readonly differenceDb: number | null
}

/** Three are asked for; a tap may be lost. */
const FEWEST_TAPS = 2

/** A tap stands out of the quiet between taps by this factor in amplitude: 15 dB. Chosen. */
const TAP_RATIO = 10 ** (15 / 20)

/** Nothing below this is a tap, full scale 1: -50 dBFS. Chosen: a tap on the housing comes near full scale. */
const LEAST_PEAK = 10 ** (-50 / 20)

/** The ring after a tap is no second one, s. */
const TAP_APART_S = 0.15

/**
 * How much louder, dB, before it is said which one is heard. Chosen: sound falls by that much from one to three
 * hand-breadths, and the ground microphone lies farther than that from the phone.
 */
const CLEAR_DB = 10

/**
 * Which microphone the app hears: the one in the ground or the phone's own. The commonest silent failure is a plug that
 * is not in all the way; then the phone records the yard's air.
 *
 * Taps on the microphone that is heard go through its housing and come much louder than taps on the other, which come
 * through the air.
 */
export function judgeTapTest({ microphone, phone }: TapTestInput): TapTest {
  const [onMicrophone, onPhone] = [tapPeaks(microphone), tapPeaks(phone)]
  const found = { microphoneTaps: onMicrophone.length, phoneTaps: onPhone.length }
  const isOn = (peaks: readonly number[]) => peaks.length >= FEWEST_TAPS
  if (!isOn(onMicrophone) && !isOn(onPhone)) {
    const isSilent = onMicrophone.length + onPhone.length === 0
    return { verdict: isSilent ? 'nothing' : 'unclear', ...found, differenceDb: null }
  }
  if (!isOn(onPhone)) return { verdict: alone(onMicrophone, onPhone), ...found, differenceDb: null }
  if (!isOn(onMicrophone)) {
    return { verdict: alone(onPhone, onMicrophone) === 'unclear' ? 'unclear' : 'phone', ...found, differenceDb: null }
  }
  const differenceDb = 20 * Math.log10(quantile(onMicrophone, 0.5) / quantile(onPhone, 0.5))
  const verdict = differenceDb >= CLEAR_DB ? 'ground microphone' : differenceDb <= -CLEAR_DB ? 'phone' : 'unclear'
  return { verdict, ...found, differenceDb }
}

/** Taps here and none there speak for here; one stray tap there, only when it is much fainter. */
function alone(here: readonly number[], there: readonly number[]): 'ground microphone' | 'unclear' {
  const [stray] = there
  const isFainter = stray === undefined || 20 * Math.log10(quantile(here, 0.5) / stray) >= CLEAR_DB
  return isFainter ? 'ground microphone' : 'unclear'
}

/** Peaks of the taps, in order of time. */
function tapPeaks(blocks: readonly HeardBlock[]): number[] {
  if (blocks.length === 0) return []
  const quiet = quantile(
    blocks.map(({ peak }) => peak),
    0.5,
  )
  const least = Math.max(LEAST_PEAK, TAP_RATIO * quiet)
  const taps: { atS: number; peak: number }[] = []
  for (const { atS, peak } of blocks) {
    if (peak < least) continue
    const last = taps.at(-1)
    if (last !== undefined && atS - last.atS < TAP_APART_S) last.peak = Math.max(last.peak, peak)
    else taps.push({ atS, peak })
  }
  return taps.map(({ peak }) => peak)
}
