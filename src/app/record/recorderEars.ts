import { type EarsGraph, glide, makeEarsGraph } from '../ears/earsGraph'

/** What tells that a clip is done: two notes up when it is whole, one low note when it ended early. */
const WHOLE_HZ = [660, 880] as const
const EARLY_HZ = [330] as const
const NOTE_S = 0.45
const NOTE_LEVEL = 0.25

/** Buzzes of a phone, ms. */
const WHOLE_BUZZ = [120, 80, 120]
const EARLY_BUZZ = [500]

/** Everything that the recorder lets sound, by the one way to the ears: the signal at the end, and monitoring. */
export class RecorderEars {
  private graph: Promise<EarsGraph> | null = null
  private monitor: GainNode | null = null

  constructor(
    private readonly context: AudioContext,
    private readonly source: AudioNode,
  ) {}

  /** Tells by tone and buzz that a clip has ended. */
  async signalEnd(isWhole: boolean): Promise<void> {
    if ('vibrate' in navigator) navigator.vibrate(isWhole ? WHOLE_BUZZ : EARLY_BUZZ)
    const graph = await this.ears()
    if (this.monitor === null) graph.rise()
    for (const [i, frequency] of (isWhole ? WHOLE_HZ : EARLY_HZ).entries()) this.note(graph, frequency, i * NOTE_S)
  }

  /** Lets the microphone be heard, from quiet; or no more. */
  async setMonitoring(on: boolean): Promise<void> {
    const graph = await this.ears()
    if (on === (this.monitor !== null)) return
    if (on) {
      this.monitor = new GainNode(this.context)
      graph.rise()
      this.source.connect(this.monitor).connect(graph.input)
      return
    }
    const { monitor } = this
    this.monitor = null
    if (monitor === null) return
    glide(this.context, monitor.gain, 0)
    setTimeout(() => {
      this.source.disconnect(monitor)
      monitor.disconnect()
    }, 200)
  }

  private ears(): Promise<EarsGraph> {
    this.graph ??= makeEarsGraph(this.context)
    return this.graph
  }

  private note(graph: EarsGraph, frequency: number, afterS: number): void {
    const { context } = this
    const fromS = context.currentTime + afterS
    const tone = new OscillatorNode(context, { frequency })
    const shape = new GainNode(context, { gain: 0 })
    shape.gain.setValueAtTime(0, fromS)
    shape.gain.linearRampToValueAtTime(NOTE_LEVEL, fromS + 0.02)
    shape.gain.setValueAtTime(NOTE_LEVEL, fromS + NOTE_S - 0.1)
    shape.gain.linearRampToValueAtTime(0, fromS + NOTE_S)
    tone.connect(shape).connect(graph.input)
    tone.start(fromS)
    tone.stop(fromS + NOTE_S)
  }
}
