import { makeLimiter } from '../../../shared/listen/limiter'

// What the audio thread has of its own; the libraries of TypeScript do not know it.
declare class AudioWorkletProcessor {}
declare const sampleRate: number
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void

/** Runs the limiter on the audio thread. One channel. */
class LimiterProcessor extends AudioWorkletProcessor {
  private readonly limiter = makeLimiter({ sampleRateHz: sampleRate })
  private silence = new Float32Array(128)

  process([inputs]: Float32Array[][], [outputs]: Float32Array[][]): boolean {
    const to = outputs?.[0]
    if (to === undefined) return true
    if (this.silence.length !== to.length) this.silence = new Float32Array(to.length)
    this.limiter.process(inputs?.[0] ?? this.silence, to)
    return true
  }
}

registerProcessor('limiter', LimiterProcessor)
