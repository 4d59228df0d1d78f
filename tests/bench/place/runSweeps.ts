import { type ChildProcess, fork } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import type { Judged, SweepOrder } from './judgeSweep'

const WORKER = fileURLToPath(new URL('./sweepWorker.ts', import.meta.url))

/**
 * Judges sweeps on several cores, each in a process of its own (the loader of TypeScript does not reach worker threads).
 *
 * @param tell Called after each sweep with how many are done.
 * @returns In the order of the sweeps.
 */
export async function runSweeps(
  orders: readonly SweepOrder[],
  cores: number,
  tell: (done: number) => void,
): Promise<Judged[]> {
  const judged: Judged[] = new Array(orders.length)
  const line = { next: 0, done: 0 }
  const workers = Array.from({ length: Math.min(cores, orders.length) }, () => fork(WORKER))
  try {
    await Promise.all(
      workers.map(async (worker) => {
        while (line.next < orders.length) {
          const at = line.next++
          judged[at] = await ask(worker, orders[at]!)
          tell(++line.done)
        }
      }),
    )
  } finally {
    for (const worker of workers) worker.kill()
  }
  return judged
}

function ask(worker: ChildProcess, order: SweepOrder): Promise<Judged> {
  return new Promise((resolve, reject) => {
    const answered = (answer: { judged?: Judged; error?: string }) => {
      worker.off('exit', died)
      if (answer.judged) resolve(answer.judged)
      else reject(new Error(`${order.family}, ${order.seed}: ${answer.error}`))
    }
    const died = () => reject(new Error(`the process that judged ${order.family}, ${order.seed}, ended`))
    worker.once('message', answered)
    worker.once('exit', died)
    worker.send(order)
  })
}
