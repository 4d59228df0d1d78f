import type { PassBand } from '../../../shared/listen/passBand'
import { type Loop, playPosition } from '../../../shared/listen/playPosition'
import { type EarsGraph, glide, makeEarsGraph } from './earsGraph'

/** Something to be heard: one channel. */
export interface Track {
  readonly id: string
  readonly samples: Float32Array
  readonly sampleRateHz: number
}

export interface PlayOptions {
  readonly fromS: number
  readonly loop: Loop | null
  /** To be as loud as what it is compared with, dB. */
  readonly liftDb: number
}

/** From one clip, or place in it, to another, s. */
const CROSSFADE_S = 0.03

interface Sounding {
  readonly track: Track
  readonly source: AudioBufferSourceNode
  readonly fade: GainNode
  readonly options: PlayOptions
  /** On the clock of the context, s. */
  readonly startedS: number
}

/**
 * Plays one clip at a time to the ears, through the one graph that limits and rises.
 *
 * A start from silence rises over a second; what follows while it sounds (another clip, another place) is crossfaded,
 * so that two clips can be compared. The browser's audio is taken only when something is first played.
 */
export class Player {
  private context: AudioContext | null = null
  private graph: Promise<EarsGraph> | null = null
  private sounding: Sounding | null = null
  private buffers = new WeakMap<Float32Array, AudioBuffer>()
  private band: PassBand | null = null
  private volumeDb = 0
  private turn = 0

  /** @param onEnd Called when a clip has come to its end by itself. */
  constructor(private readonly onEnd: () => void) {}

  /**
   * Lets the browser get its audio ready in the background, so that the first press of play does not wait for it: a
   * browser starts its audio when it is first asked what devices there are, and does that without holding up the page.
   */
  prepare(): void {
    void navigator.mediaDevices?.enumerateDevices().catch(() => undefined)
  }

  /** Takes the browser's audio. To be called straight from a click or key, or some browsers stay silent. */
  wake(): void {
    this.context ??= new AudioContext()
    this.graph ??= makeEarsGraph(this.context)
    void this.context.resume()
  }

  async play(track: Track, options: PlayOptions): Promise<void> {
    const turn = ++this.turn
    this.wake()
    const context = this.context!
    const [graph] = await Promise.all([this.graph!, context.resume()])
    if (turn !== this.turn) return
    graph.setBand(this.band)
    graph.setVolumeDb(this.volumeDb)
    if (this.sounding === null) graph.rise()
    this.fadeOut()
    this.sounding = this.begin(context, graph, track, options)
  }

  pause(): void {
    this.turn++
    this.fadeOut()
  }

  /** Where the clip is that sounds, s; `null` in silence. */
  positionS(): number | null {
    if (this.sounding === null || this.context === null) return null
    const { track, options, startedS } = this.sounding
    const durationS = track.samples.length / track.sampleRateHz
    return playPosition(options.fromS, this.context.currentTime - startedS, { loop: options.loop, durationS })
  }

  /** Seconds that have sounded on the audio clock, to measure with; stands still while the browser holds the sound back. */
  clockS(): number {
    return this.context?.currentTime ?? 0
  }

  setBand(band: PassBand | null): void {
    this.band = band
    void this.graph?.then((graph) => graph.setBand(this.band))
  }

  setVolumeDb(volumeDb: number): void {
    this.volumeDb = volumeDb
    void this.graph?.then((graph) => graph.setVolumeDb(this.volumeDb))
  }

  setLiftDb(liftDb: number): void {
    if (this.sounding === null || this.context === null) return
    glide(this.context, this.sounding.fade.gain, 10 ** (liftDb / 20))
  }

  /** Gives the browser's audio back. */
  close(): void {
    this.pause()
    void this.context?.close()
    this.context = null
    this.graph = null
  }

  private begin(context: AudioContext, graph: EarsGraph, track: Track, options: PlayOptions): Sounding {
    const { fromS, loop, liftDb } = options
    const source = new AudioBufferSourceNode(context, { buffer: this.bufferOf(track) })
    if (loop !== null) Object.assign(source, { loop: true, loopStart: loop.fromS, loopEnd: loop.toS })
    const now = context.currentTime
    const fade = new GainNode(context, { gain: 0 })
    fade.gain.setValueAtTime(0, now)
    fade.gain.linearRampToValueAtTime(10 ** (liftDb / 20), now + CROSSFADE_S)
    source.connect(fade).connect(graph.input)
    source.start(now, fromS)
    const sounding = { track, source, fade, options, startedS: now }
    source.onended = () => {
      fade.disconnect()
      if (this.sounding !== sounding) return
      this.sounding = null
      this.onEnd()
    }
    return sounding
  }

  private fadeOut(): void {
    if (this.sounding === null || this.context === null) return
    const { source, fade } = this.sounding
    this.sounding = null
    glide(this.context, fade.gain, 0)
    source.stop(this.context.currentTime + 2 * CROSSFADE_S)
  }

  private bufferOf({ samples, sampleRateHz }: Track): AudioBuffer {
    const before = this.buffers.get(samples)
    if (before !== undefined) return before
    const buffer = new AudioBuffer({ length: samples.length, numberOfChannels: 1, sampleRate: sampleRateHz })
    buffer.copyToChannel(samples as Float32Array<ArrayBuffer>, 0)
    this.buffers.set(samples, buffer)
    return buffer
  }
}
