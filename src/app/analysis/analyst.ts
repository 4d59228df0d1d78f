import { FormatError } from '../../../shared/base/errors'
import type { CallName, Calls, Reply, Request } from '../../worker/protocol'

/** How long an idle worker is kept, ms. Chosen: the next change of the line finds it warm. */
const IDLE_MS = 60_000

interface Call {
  readonly request: Request
  readonly transfer: readonly Transferable[]
  readonly onPart: ((part: never) => void) | undefined
  readonly resolve: (result: never) => void
  readonly reject: (error: Error) => void
  readonly signal: AbortSignal | undefined
}

export interface CallOptions<Name extends CallName> {
  readonly signal?: AbortSignal | undefined
  /** Buffers that are handed over and gone here afterwards. */
  readonly transfer?: readonly Transferable[]
  readonly onPart?: (part: Calls[Name]['part']) => void
}

/**
 * The one worker, with one queue before it.
 *
 * A cancelled call leaves the queue; one that is under way ends the worker, and the next call starts another. The worker
 * also ends after a while with nothing to do.
 */
export class Analyst {
  private readonly queue: Call[] = []
  private current: Call | null = null
  private worker: Worker | null = null
  private idle: number | null = null
  private lastId = 0

  /**
   * @throws {FormatError} a file is wrong; its message is ready to be shown.
   * @throws {DOMException} `AbortError` when the signal says so.
   */
  call<Name extends CallName>(
    name: Name,
    input: Calls[Name]['in'],
    { signal, transfer = [], onPart }: CallOptions<Name> = {},
  ): Promise<Calls[Name]['out']> {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(aborted())
      const call: Call = {
        request: { id: ++this.lastId, name, input },
        transfer,
        onPart: onPart as Call['onPart'],
        resolve: resolve as Call['resolve'],
        reject,
        signal,
      }
      signal?.addEventListener('abort', () => this.cancel(call), { once: true })
      this.queue.push(call)
      this.next()
    })
  }

  /** Ends the worker and everything that waits for it. */
  close(): void {
    for (const call of [...this.queue]) this.cancel(call)
    if (this.current !== null) this.cancel(this.current)
    this.endWorker()
  }

  private next(): void {
    if (this.current !== null) return
    const call = this.queue.shift()
    if (call === undefined) {
      this.idle ??= window.setTimeout(() => this.endWorker(), IDLE_MS)
      return
    }
    if (this.idle !== null) clearTimeout(this.idle)
    this.idle = null
    this.current = call
    this.worker ??= this.startWorker()
    this.worker.postMessage(call.request, [...call.transfer])
  }

  private startWorker(): Worker {
    const worker = new Worker(new URL('../../worker/main.ts', import.meta.url), { type: 'module' })
    worker.addEventListener('message', (event: MessageEvent<Reply>) => this.take(event.data))
    worker.addEventListener('error', (event) => this.fail(event.message || 'the worker could not be started'))
    return worker
  }

  private take(reply: Reply): void {
    const call = this.current
    if (call === null || reply.id !== call.request.id) return
    if ('part' in reply) {
      call.onPart?.(reply.part as never)
      return
    }
    this.current = null
    if ('result' in reply) call.resolve(reply.result as never)
    else if ('fault' in reply) call.reject(new Error(reply.fault))
    else call.reject(new FormatError(reply.wrongFile.file, reply.wrongFile.place, reply.wrongFile.mend))
    this.next()
  }

  private fail(message: string): void {
    const call = this.current
    this.current = null
    this.endWorker()
    call?.reject(new Error(message))
    this.next()
  }

  private cancel(call: Call): void {
    const waiting = this.queue.indexOf(call)
    if (waiting >= 0) this.queue.splice(waiting, 1)
    else if (this.current !== call) return
    else {
      this.current = null
      this.endWorker()
    }
    call.reject(aborted())
    this.next()
  }

  private endWorker(): void {
    if (this.idle !== null) clearTimeout(this.idle)
    this.idle = null
    this.worker?.terminate()
    this.worker = null
  }
}

function aborted(): DOMException {
  return new DOMException('cancelled', 'AbortError')
}

/** True when a call ended because somebody cancelled it. */
export function isAborted(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError'
}
