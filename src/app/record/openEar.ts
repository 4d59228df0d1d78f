import { CHUNK_S } from '../../../shared/record/joinChunks'
import type { HeardBlock } from '../../../shared/record/settling'
import type { KeptRecording } from '../storage/database'
import type { CaptureReport } from './captureMessages'
import { type Microphone, openMicrophone } from './microphone'
import { RecorderEars } from './recorderEars'
import { WakeLock } from './wakeLock'

export interface OpenEarListeners {
  /** Blocks of 20 ms. */
  readonly onBlock: (block: HeardBlock) => void
  /** Blocks for the eye and for settling. */
  readonly onHeard: (block: HeardBlock) => void
  readonly onRecorded: (recordedS: number, isWhole: boolean) => void
  readonly onGone: () => void
  readonly onHeldBack: () => void
}

/** Blocks of the audio thread are joined to this length for the eye and for settling, s. */
const SHOWN_BLOCK_S = 0.1

/** The microphone while it is open, with all that goes with it: what is heard of it, and the screen that stays awake. */
export class OpenEar {
  /** As it was heard last. */
  channelCount = 1
  private joined: HeardBlock | null = null
  private readonly wakeLock = new WakeLock()

  /**
   * @param sink Where chunks of a clip go.
   * @throws {MicrophoneError} there is none to be had.
   */
  static async open(deviceId: string | null, sink: () => MessagePort, listeners: OpenEarListeners): Promise<OpenEar> {
    let ear: OpenEar | null = null
    const { onGone, onHeldBack } = listeners
    const microphone = await openMicrophone(deviceId, { onReport: (report) => ear?.take(report), onGone, onHeldBack })
    const port = sink()
    microphone.command({ kind: 'sink', port }, [port])
    ear = new OpenEar(microphone, new RecorderEars(microphone.context, microphone.source), listeners)
    return ear
  }

  private constructor(
    readonly microphone: Microphone,
    readonly ears: RecorderEars,
    private readonly listeners: OpenEarListeners,
  ) {
    this.wakeLock.hold()
  }

  get rateHz(): number {
    return this.microphone.context.sampleRate
  }

  /** What is known of a clip of this length when it begins. */
  about(wantedS: number): KeptRecording['about'] {
    const { device, settings } = this.microphone
    const { rateHz: sampleRateHz, channelCount } = this
    return { device: device.slice(0, 500), sampleRateHz, channelCount, settings, wantedS }
  }

  record(id: string, lengthS: number): void {
    const [frames, chunkFrames] = [Math.round(lengthS * this.rateHz), Math.round(CHUNK_S * this.rateHz)]
    this.microphone.command({ kind: 'record', id, frames, chunkFrames })
  }

  /** Ends the clip with what there is. */
  endClip(): void {
    this.microphone.command({ kind: 'stop' })
  }

  close(): void {
    this.wakeLock.release()
    this.microphone.close()
  }

  private take(report: CaptureReport): void {
    const { rateHz, listeners } = this
    if (report.kind === 'recorded') {
      listeners.onRecorded(report.frames / rateHz, report.isWhole)
      return
    }
    const { endFrame, frames, power, peak } = report
    this.channelCount = report.channelCount
    const block = { atS: endFrame / rateHz, durationS: frames / rateHz, power, peak }
    listeners.onBlock(block)
    const joined = this.joined === null ? block : joinBlocks(this.joined, block)
    const isLong = joined.durationS >= SHOWN_BLOCK_S
    this.joined = isLong ? null : joined
    if (isLong) listeners.onHeard(joined)
  }
}

function joinBlocks(a: HeardBlock, b: HeardBlock): HeardBlock {
  const durationS = a.durationS + b.durationS
  const power = (a.power * a.durationS + b.power * b.durationS) / durationS
  return { atS: b.atS, durationS, power, peak: Math.max(a.peak, b.peak) }
}
