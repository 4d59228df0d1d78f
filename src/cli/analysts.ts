import { availableParallelism } from 'node:os'
import { Worker } from 'node:worker_threads'
import type { HeardClip } from '../../shared/evidence/heardClip'
import type { LocateAnswer } from '../../shared/locate/answer'
import type { LocateInput } from '../../shared/locate/locate'
import type { ClipPlace } from './listen'
import type { MeasuredSound } from './measureSound'

export type Task =
  | { readonly clip: ClipPlace }
  | { readonly hear: { readonly bytes: Uint8Array; readonly file: string } }
  | { readonly locate: LocateInput }
  | { readonly sha256Of: ClipPlace }
  | { readonly sound: ClipPlace }
type Result = HeardClip | LocateAnswer | string | null | MeasuredSound
export type Reply = { readonly result: Result } | { readonly fault: string }

/** Clips below which a second thread costs more than it saves. Chosen. */
const CLIPS_WORTH_A_THREAD = 6
/** Chosen: the disk and the memory of a small machine. */
const MOST_THREADS = 4

/** Threads that listen and locate. They end with `close`, and with the program. */
export class Analysts {
  private readonly analysts: Analyst[]

  /** @param clipCount How many clips there will be. */
  constructor(clipCount: number) {
    const useful = Math.ceil(clipCount / CLIPS_WORTH_A_THREAD)
    const count = Math.max(1, Math.min(useful, availableParallelism(), MOST_THREADS))
    this.analysts = Array.from({ length: count }, () => new Analyst())
  }

  /**
   * Listens to every clip, each thread to one at a time.
   *
   * @param onHeard Called after each with how many are done.
   * @returns In the order of the clips, whichever thread was quicker.
   */
  async listen(clips: readonly ClipPlace[], onHeard: (done: number) => void): Promise<HeardClip[]> {
    return this.each(clips, (clip) => ({ clip }), onHeard)
  }

  /** SHA-256 of every clip's bytes, 64 hexadecimal digits; `null` for one that cannot be opened. */
  async sha256Of(clips: readonly ClipPlace[], onDone: (done: number) => void): Promise<(string | null)[]> {
    return this.each(clips, (clip) => ({ sha256Of: clip }), onDone)
  }

  /** What the detector looks at, of every clip. `onMeasured` is called after each. */
  async measure(
    clips: readonly ClipPlace[],
    onMeasured: (done: number, index: number, sound: MeasuredSound) => void,
  ): Promise<MeasuredSound[]> {
    return this.each<MeasuredSound>(clips, (clip) => ({ sound: clip }), onMeasured)
  }

  private async each<T extends Result>(
    clips: readonly ClipPlace[],
    task: (clip: ClipPlace) => Task,
    onDone: (done: number, index: number, result: T) => void,
  ): Promise<T[]> {
    const results: T[] = []
    let next = 0
    let done = 0
    const work = async (analyst: Analyst) => {
      while (next < clips.length) {
        const index = next++
        const result = (await analyst.ask(task(clips[index]!))) as T
        results[index] = result
        onDone(++done, index, result)
      }
    }
    await Promise.all(this.analysts.map(work))
    return results
  }

  /** Listens to a clip whose bytes are here already. */
  async hear(bytes: Uint8Array, file: string): Promise<HeardClip> {
    return (await this.analysts[0]!.ask({ hear: { bytes, file } })) as HeardClip
  }

  async locate(input: LocateInput): Promise<LocateAnswer> {
    return (await this.analysts[0]!.ask({ locate: input })) as LocateAnswer
  }

  async close(): Promise<void> {
    await Promise.all(this.analysts.map((analyst) => analyst.close()))
  }
}

/** One task at a time for one thread. A fault in the thread is a fault here. */
class Analyst {
  private readonly thread = new Worker(new URL(import.meta.url)) // the built program is one file
  private waiting: { resolve: (result: Result) => void; reject: (fault: Error) => void } | null = null

  constructor() {
    this.thread.on('message', (reply: Reply) => {
      if ('result' in reply) this.waiting?.resolve(reply.result)
      else this.waiting?.reject(new Error(reply.fault))
    })
    this.thread.on('error', (error) => this.waiting?.reject(error))
    this.thread.on('exit', () => this.waiting?.reject(new Error('a thread ended before its work was done')))
  }

  ask(task: Task): Promise<Result> {
    return new Promise((resolve, reject) => {
      this.waiting = { resolve, reject }
      this.thread.postMessage(task)
    })
  }

  close(): Promise<number> {
    return this.thread.terminate()
  }
}
