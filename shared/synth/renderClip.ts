import type { Clip } from '../audio/clip'
import { Random } from '../base/random'
import { quantile } from '../base/statistics'
import type { Rings } from './bubbleTrain'
import { type Chirp, ENVELOPE_STEP_S, type HeardTone, type VoiceSound } from './clipSounds'
import { nearestCell, totalPower } from './grid'
import { clipParts } from './parts'
import { ridingGain } from './ridingGain'
import { SpectrumSum } from './spectrumSum'
import { clipDurationS, FAINT_REACH } from './spoils'
import type { ClipPlan, Yard } from './yard'

/**
 * The sound of one clip, at its recorder's own rate: every part of it summed, then what the recorder and a spoilt take
 * do to it.
 *
 * @returns One channel. The same yard and clip give the same samples.
 */
export function renderClip(yard: Yard, plan: ClipPlan): Clip {
  const { sampleRateHz, encoding } = plan.recorder
  const durationS = clipDurationS(plan)
  const samples = new Float64Array(Math.round(durationS * sampleRateHz))
  const random = Random.named(`${yard.seed}/${plan.row.file}`, 'sound')
  renderParts(samples, sampleRateHz, { yard, plan, random })
  if (plan.recorder.ridesGain) rideGain(samples, sampleRateHz, totalPower(yard.floorPsd))
  spoil(samples, plan)
  return { channels: [asRecorded(samples, encoding)], sampleRateHz, encoding, problems: [] }
}

/** Samples as the recorder's converter leaves them: rounded to its steps and held to its range. */
function asRecorded(samples: Float64Array, encoding: Clip['encoding']): Float32Array {
  const channel = Float32Array.from(samples)
  if (encoding.kind !== 'pcm') return channel
  const steps = 2 ** (encoding.bits - 1)
  const round = (v: number) => Math.sign(v) * Math.floor(Math.abs(v) * steps + 0.5)
  return channel.map((v) => Math.min(Math.max(round(v), -steps), steps - 1) / steps)
}

function renderParts(
  samples: Float64Array,
  sampleRateHz: number,
  { yard, plan, random }: { yard: Yard; plan: ClipPlan; random: Random },
): void {
  const parts = clipParts(yard, plan)
  const steady = new SpectrumSum(samples.length, sampleRateHz)
  steady.addNoise(parts.steadyPsd, random)
  for (const { rings, gain } of parts.rings) {
    if (rings.timeS.length === 0) continue
    const dry = new Float64Array(steady.length)
    addRings(dry, rings, sampleRateHz)
    steady.addFiltered(dry, gain)
  }
  steady.addTo(samples, null)
  for (const { psd, envelope } of parts.swelling) {
    const noise = new SpectrumSum(samples.length, sampleRateHz)
    noise.addNoise(psd, random)
    noise.addTo(samples, stretched(envelope, samples.length, sampleRateHz))
  }
  for (const tone of parts.tones) addTone(samples, tone, sampleRateHz, random)
  for (const chirp of parts.chirps) addChirp(samples, chirp, sampleRateHz)
  for (const voice of parts.voices) addVoice(samples, voice, sampleRateHz)
}

/**
 * Adds rings one by one, each a damped sine with a slightly rising pitch, by turning a complex number instead of a sine
 * per sample.
 */
export function addRings(samples: Float64Array, rings: Rings, sampleRateHz: number): void {
  const stepS = 1 / sampleRateHz
  for (let i = 0; i < rings.timeS.length; i++) {
    const pitchHz = rings.pitchHz[i]!
    if (pitchHz > 0.47 * sampleRateHz) continue
    const w = 2 * Math.PI * pitchHz
    const d = rings.decayPerS[i]!
    const first = Math.ceil(rings.timeS[i]! * sampleRateHz)
    const last = Math.min(samples.length, first + Math.ceil((9.2 / d) * sampleRateHz))
    const lateS = first * stepS - rings.timeS[i]!
    const height = rings.amplitude[i]! * Math.exp(-d * lateS)
    let re = height * Math.cos(w * lateS)
    let im = height * Math.sin(w * lateS)
    const shrink = Math.exp(-d * stepS)
    let turnRe = shrink * Math.cos(w * stepS)
    let turnIm = shrink * Math.sin(w * stepS)
    const rise = w * rings.risePerS[i]! * 2 * stepS * stepS
    const riseRe = Math.cos(rise)
    const riseIm = Math.sin(rise)
    for (let n = first; n < last; n++) {
      samples[n]! += im
      const nextRe = re * turnRe - im * turnIm
      im = re * turnIm + im * turnRe
      re = nextRe
      const nextTurn = turnRe * riseRe - turnIm * riseIm
      turnIm = turnRe * riseIm + turnIm * riseRe
      turnRe = nextTurn
    }
  }
}

/** An envelope at the sample rate, straight lines between its steps. */
function stretched(envelope: Float32Array, count: number, sampleRateHz: number): Float64Array {
  const perStep = ENVELOPE_STEP_S * sampleRateHz
  return Float64Array.from({ length: count }, (_, n) => {
    const place = n / perStep
    const i = Math.floor(place)
    const a = envelope[i] ?? 0
    return a + ((envelope[i + 1] ?? a) - a) * (place - i)
  })
}

function addTone(samples: Float64Array, tone: HeardTone, sampleRateHz: number, random: Random): void {
  const phase = random.uniform(0, 2 * Math.PI)
  if (tone.frequencyHz > 0.47 * sampleRateHz) return
  const step = (2 * Math.PI * tone.frequencyHz) / sampleRateHz
  const amplitude = Math.sqrt(2 * tone.power)
  for (let n = 0; n < samples.length; n++) samples[n]! += amplitude * Math.sin(phase + step * n)
}

function addChirp(samples: Float64Array, chirp: Chirp, sampleRateHz: number): void {
  if (Math.max(chirp.startHz, chirp.endHz) > 0.47 * sampleRateHz) return
  const glide = (chirp.endHz - chirp.startHz) / chirp.durationS / 2
  eachSample(samples, chirp, sampleRateHz, (t) => {
    const phase = 2 * Math.PI * (chirp.startHz * t + glide * t * t)
    return chirp.amplitude * Math.sin((Math.PI * t) / chirp.durationS) * Math.sin(phase)
  })
}

function addVoice(samples: Float64Array, voice: VoiceSound, sampleRateHz: number): void {
  const glide = (voice.endHz - voice.startHz) / voice.durationS / 2
  const middleHz = (voice.startHz + voice.endHz) / 2
  const highest = Math.min(40, Math.floor(Math.min(5000, 0.45 * sampleRateHz) / (1.2 * middleHz)))
  const heights = Array.from({ length: highest }, (_, h) => {
    const psd = voice.psd[nearestCell((h + 1) * middleHz)]!
    return Math.sqrt(2 * psd * middleHz)
  })
  eachSample(samples, voice, sampleRateHz, (t) => {
    const phase = 2 * Math.PI * (voice.startHz * t + glide * t * t)
    let sum = 0
    for (let h = 0; h < highest; h++) sum += heights[h]! * Math.sin((h + 1) * phase)
    return sum * Math.sin((Math.PI * t) / voice.durationS) ** 2
  })
}

function eachSample(
  samples: Float64Array,
  sound: { timeS: number; durationS: number },
  sampleRateHz: number,
  value: (t: number) => number,
): void {
  const first = Math.ceil(sound.timeS * sampleRateHz)
  const last = Math.min(samples.length, Math.floor((sound.timeS + sound.durationS) * sampleRateHz))
  for (let n = first; n < last; n++) samples[n]! += value(n / sampleRateHz - sound.timeS)
}

const RIDING_FRAME_S = 0.05

function rideGain(samples: Float64Array, sampleRateHz: number, restingPower: number): void {
  const frame = Math.round(RIDING_FRAME_S * sampleRateHz)
  const powers = new Float64Array(Math.ceil(samples.length / frame))
  for (let n = 0; n < samples.length; n++) powers[Math.floor(n / frame)]! += samples[n]! ** 2 / frame
  const gain = ridingGain(powers, restingPower, RIDING_FRAME_S).map(Math.sqrt)
  for (let n = 0; n < samples.length; n++) {
    const place = n / frame
    const i = Math.floor(place)
    const a = gain[i]!
    samples[n]! *= a + ((gain[i + 1] ?? a) - a) * (place - i)
  }
}

/** Share of the samples of an overdriven clip that lie beyond what its converter can say. Chosen. */
const CUT_OFF_SHARE = 0.5

function spoil(samples: Float64Array, plan: ClipPlan): void {
  if (plan.spoil === 'silent') samples.fill(0)
  if (plan.spoil === 'clipped') {
    const gain = 1 / quantile(samples.map(Math.abs), 1 - CUT_OFF_SHARE)
    for (let n = 0; n < samples.length; n++) samples[n] = Math.min(Math.max(samples[n]! * gain, -1), 1)
  }
  if (plan.spoil === 'faint') {
    const gain = FAINT_REACH / quantile(samples.map(Math.abs), 0.99)
    // Whatever the file holds, the converter had 16 bits.
    const faint = samples.map((v) => v * gain)
    samples.set(asRecorded(faint, { kind: 'pcm', bits: 16 }))
  }
}
