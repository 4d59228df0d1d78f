import { type ChildProcess, fork } from 'node:child_process'

/** What a worker sends back: what came of an order, or what went wrong. */
export type Answer<Result> = { readonly result: Result } | { readonly error: string }

/**
 * Has orders worked off on several cores, each in a process of its own (the loader of TypeScript does not reach worker threads).
 *
 * @param worker File that `serveOrders` runs in.
 * @param tell   Called after each order with how many are done.
 * @returns In the order of the orders.
 */
export async function inProcesses<Order, Result>(
  worker: string,
  orders: readonly Order[],
  cores: number,
  tell: (done: number) => void,
): Promise<Result[]> {
  const results: Result[] = new Array(orders.length)
  const line = { next: 0, done: 0 }
  const workers = Array.from({ length: Math.min(cores, orders.length) }, () => fork(worker))
  try {
    await Promise.all(
      workers.map(async (each) => {
        while (line.next < orders.length) {
          const at = line.next++
          results[at] = await ask<Order, Result>(each, orders[at]!)
          tell(++line.done)
        }
      }),
    )
  } finally {
    for (const each of workers) each.kill()
  }
  return results
}

function ask<Order, Result>(worker: ChildProcess, order: Order): Promise<Result> {
  return new Promise((resolve, reject) => {
    const answered = (answer: Answer<Result>) => {
      worker.off('exit', died)
      if ('result' in answer) resolve(answer.result)
      else reject(new Error(`${JSON.stringify(order)}: ${answer.error}`))
    }
    const died = () => reject(new Error(`the process that worked at ${JSON.stringify(order)} ended`))
    worker.once('message', answered)
    worker.once('exit', died)
    worker.send(order as object)
  })
}

/** Works off what `inProcesses` sends to this process, one order after another. */
export function serveOrders<Order, Result>(work: (order: Order) => Result | Promise<Result>): void {
  process.on('message', async (order: Order) => {
    try {
      process.send!({ result: await work(order) })
    } catch (error) {
      process.send!({ error: error instanceof Error ? (error.stack ?? error.message) : String(error) })
    }
  })
  process.on('disconnect', () => process.exit())
}
