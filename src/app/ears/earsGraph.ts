import { bandPassStages } from '../../../shared/listen/bandPassStages'
import { EAR_CEILING } from '../../../shared/listen/limiter'
import type { PassBand } from '../../../shared/listen/passBand'
import limiterUrl from './limiterWorklet.ts?worker&url'

/** The one way to the ears. Everything that sounds goes into `input`. */
export interface EarsGraph {
  readonly input: AudioNode
  /** `null` lets everything through. */
  readonly setBand: (band: PassBand | null) => void
  readonly setVolumeDb: (volumeDb: number) => void
  /** Starts quiet and comes up to the chosen loudness within a second. */
  readonly rise: () => void
}

/** Loudness at which a rise begins, and its length. */
const RISE_FROM = 10 ** (-40 / 20)
export const RISE_S = 1

/** Changes glide over about this, s: fast enough to feel at once, slow enough not to click. */
const GLIDE_S = 0.03

/** Below this nothing is heard, but a microphone's direct voltage would eat up the limiter's room, Hz. */
const RUMBLE_HZ = 25

/**
 * Builds the way to the ears: band, rise, volume, limiter, clamp.
 *
 * The clamp is the last node and holds the ceiling by itself: a wave shaper gives nothing beyond the ends of its curve.
 * So a browser without audio worklets plays on, only less smoothly at peaks.
 */
export async function makeEarsGraph(context: BaseAudioContext): Promise<EarsGraph> {
  const input = new GainNode(context, { channelCount: 1, channelCountMode: 'explicit' })
  const plain = new BiquadFilterNode(context, { type: 'highpass', frequency: RUMBLE_HZ })
  const stages = bandPassStages({ lowHz: 60, highHz: 8000 }, context.sampleRate).map(
    ({ type, qDb }) => new BiquadFilterNode(context, { type, Q: qDb }),
  )
  const plainGain = new GainNode(context, { gain: 1 })
  const bandGain = new GainNode(context, { gain: 0 })
  const rising = new GainNode(context, { gain: 0 })
  const volume = new GainNode(context, { gain: 1 })
  connect([input, plain, plainGain, rising])
  connect([input, ...stages, bandGain, rising])
  connect([rising, volume, ...(await limiterNodes(context)), ...clampNodes(context), context.destination])
  return {
    input,
    setBand: (band) => {
      glide(context, plainGain.gain, band === null ? 1 : 0)
      glide(context, bandGain.gain, band === null ? 0 : 1)
      if (band === null) return
      for (const [i, { frequencyHz }] of bandPassStages(band, context.sampleRate).entries()) {
        glide(context, stages[i]!.frequency, frequencyHz)
      }
    },
    setVolumeDb: (volumeDb) => glide(context, volume.gain, 10 ** (volumeDb / 20)),
    rise: () => {
      const now = context.currentTime
      rising.gain.cancelScheduledValues(now)
      rising.gain.setValueAtTime(RISE_FROM, now)
      rising.gain.exponentialRampToValueAtTime(1, now + RISE_S)
    },
  }
}

/** Lets a parameter glide to a value from where it is. */
export function glide(context: BaseAudioContext, parameter: AudioParam, value: number): void {
  parameter.cancelScheduledValues(context.currentTime)
  parameter.setTargetAtTime(value, context.currentTime, GLIDE_S / 3)
}

function connect(nodes: readonly AudioNode[]): void {
  for (let i = 1; i < nodes.length; i++) nodes[i - 1]!.connect(nodes[i]!)
}

async function limiterNodes(context: BaseAudioContext): Promise<AudioNode[]> {
  try {
    await context.audioWorklet.addModule(limiterUrl)
    return [
      new AudioWorkletNode(context, 'limiter', {
        channelCount: 1,
        channelCountMode: 'explicit',
        outputChannelCount: [1],
      }),
    ]
  } catch {
    return [] // the clamp behind it holds
  }
}

function clampNodes(context: BaseAudioContext): AudioNode[] {
  const ceiling = Math.fround(EAR_CEILING * (1 - 1e-6))
  const curve = Float32Array.of(-ceiling, ceiling)
  return [
    new GainNode(context, { gain: 1 / ceiling }),
    new WaveShaperNode(context, { curve, oversample: 'none', channelCount: 1, channelCountMode: 'explicit' }),
  ]
}
