import type { CaptureCommand, CaptureReport, ChunkMessage } from './captureMessages'

// What the audio thread has of its own; the libraries of TypeScript do not know it.
declare class AudioWorkletProcessor {
  readonly port: MessagePort
}
declare const sampleRate: number
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void

/** Length of a block whose level is told, s: fine enough to tell taps apart. */
const BLOCK_S = 0.02

/** More channels than this are no microphone. */
const MOST_CHANNELS = 2

/** Measures what the microphone gives, and collects it in chunks while a clip is recorded. Lets nothing through. */
class CaptureProcessor extends AudioWorkletProcessor {
  private sink: MessagePort | null = null
  private endFrame = 0
  private block = { frames: 0, power: new Float64Array(MOST_CHANNELS), peak: 0 }
  private clip: ClipInMaking | null = null

  constructor() {
    super()
    this.port.onmessage = ({ data }: MessageEvent<CaptureCommand>) => this.obey(data)
  }

  process([input]: Float32Array[][]): boolean {
    const channels = (input ?? []).slice(0, MOST_CHANNELS)
    const frames = channels[0]?.length ?? 0
    if (frames === 0) return true
    this.endFrame += frames
    this.measure(channels, frames)
    if (this.clip !== null) this.collect(this.clip, channels, frames)
    return true
  }

  private obey(command: CaptureCommand): void {
    if (command.kind === 'sink') this.sink = command.port
    else if (command.kind === 'record') this.clip = { ...command, number: 0, done: 0, filled: 0, chunk: [] }
    else if (this.clip !== null) this.hand(this.clip, true)
  }

  private measure(channels: readonly Float32Array[], frames: number): void {
    const { block } = this
    for (const [channel, samples] of channels.entries()) {
      let sum = 0
      for (let i = 0; i < frames; i++) {
        const size = Math.abs(samples[i]!)
        sum += size * size
        if (size > block.peak) block.peak = size
      }
      block.power[channel]! += sum
    }
    block.frames += frames
    if (block.frames < BLOCK_S * sampleRate) return
    const power = Math.max(...block.power) / block.frames
    const { endFrame } = this
    this.report({
      kind: 'heard',
      endFrame,
      frames: block.frames,
      power,
      peak: block.peak,
      channelCount: channels.length,
    })
    block.frames = 0
    block.peak = 0
    block.power.fill(0)
  }

  private collect(clip: ClipInMaking, channels: readonly Float32Array[], frames: number): void {
    for (let from = 0; from < frames && this.clip === clip; ) {
      if (clip.chunk.length === 0) clip.chunk = channels.map(() => new Float32Array(clip.chunkFrames))
      const count = Math.min(frames - from, clip.chunkFrames - clip.filled, clip.frames - clip.done)
      for (const [channel, target] of clip.chunk.entries()) {
        target.set((channels[channel] ?? channels[0]!).subarray(from, from + count), clip.filled)
      }
      from += count
      clip.filled += count
      clip.done += count
      const isWhole = clip.done === clip.frames
      if (isWhole || clip.filled === clip.chunkFrames) this.hand(clip, isWhole)
    }
  }

  private hand(clip: ClipInMaking, isLast: boolean): void {
    const channels = clip.chunk.map((samples) => samples.slice(0, clip.filled))
    const message: ChunkMessage = { id: clip.id, number: clip.number, channels, isLast }
    this.sink?.postMessage(
      message,
      channels.map(({ buffer }) => buffer),
    )
    clip.number++
    clip.filled = 0
    clip.chunk = []
    if (isLast) this.clip = null
    this.report({ kind: 'recorded', frames: clip.done, isWhole: isLast })
  }

  private report(report: CaptureReport): void {
    this.port.postMessage(report)
  }
}

interface ClipInMaking {
  readonly id: string
  readonly frames: number
  readonly chunkFrames: number
  number: number
  /** Frames of the whole clip, and of the chunk, so far. */
  done: number
  filled: number
  chunk: Float32Array<ArrayBuffer>[]
}

registerProcessor('capture', CaptureProcessor)
