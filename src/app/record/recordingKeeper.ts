import type { AssembledRecording } from '../storage/assembleRecording'
import type { KeptRecording } from '../storage/database'
import type { RecordingCall, RecordingReply } from '../storage/recordingCalls'

/** A recording that could not be kept: what there is of it stays where it is. */
export class KeepingError extends Error {
  constructor(
    readonly full: boolean,
    why: string,
  ) {
    super(why)
  }
}

export interface KeeperListeners {
  /** The last chunk of a clip is durable, or lost. */
  readonly onEnd: (id: string) => void
  /** A chunk was refused by the device. */
  readonly onLost: (id: string, full: boolean) => void
}

interface Waiting {
  readonly resolve: (assembled: AssembledRecording | null) => void
  readonly reject: (error: KeepingError) => void
}

/** The page's side of the worker that keeps recordings. */
export class RecordingKeeper {
  private readonly worker: Worker
  private readonly waiting = new Map<string, Waiting>()

  constructor(private readonly listeners: KeeperListeners) {
    this.worker = new Worker(new URL('../storage/recordingWorker.ts', import.meta.url), { type: 'module' })
    this.worker.onmessage = ({ data }: MessageEvent<RecordingReply>) => this.take(data)
    this.worker.onerror = (event) => this.failAll(event.message)
  }

  /** @returns Where the audio thread is to put its chunks. */
  sink(): MessagePort {
    const { port1, port2 } = new MessageChannel()
    this.post({ kind: 'listen', port: port2 }, [port2])
    return port1
  }

  /**
   * Joins what there is of a recording, and keeps it among the sounds.
   *
   * @returns `null` when nothing was recorded.
   * @throws {KeepingError} there is no room, or the device refuses.
   */
  assemble({ id, about }: Pick<KeptRecording, 'id' | 'about'>): Promise<AssembledRecording | null> {
    return this.call(id, { kind: 'assemble', recording: { id, about } })
  }

  /** Takes a recording out of storage. */
  async forget(id: string): Promise<void> {
    await this.call(id, { kind: 'forget', id })
  }

  close(): void {
    this.worker.terminate()
    this.failAll('closed')
  }

  private call(id: string, call: RecordingCall): Promise<AssembledRecording | null> {
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve, reject })
      this.post(call)
    })
  }

  private post(call: RecordingCall, transfer: Transferable[] = []): void {
    this.worker.postMessage(call, transfer)
  }

  private take(reply: RecordingReply): void {
    if (reply.kind === 'durable' || reply.kind === 'lost') {
      if (reply.kind === 'lost') this.listeners.onLost(reply.id, reply.full)
      if (reply.isLast) this.listeners.onEnd(reply.id)
      return
    }
    const waiting = this.waiting.get(reply.id)
    this.waiting.delete(reply.id)
    if (reply.kind === 'failed') waiting?.reject(new KeepingError(reply.full, reply.why))
    else waiting?.resolve(reply.kind === 'assembled' ? reply.assembled : null)
  }

  private failAll(why: string): void {
    for (const { reject } of this.waiting.values()) reject(new KeepingError(false, why))
    this.waiting.clear()
  }
}
