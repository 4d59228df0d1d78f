import { parentPort } from 'node:worker_threads'
import { locate } from '../../shared/locate/locate'
import type { Reply, Task } from './analysts'
import { listen } from './listen'

/** What runs in a thread of its own: one task after another, so that the main thread stays free to be interrupted. */
export function serveTasks(): void {
  parentPort!.on('message', (task: Task) => parentPort!.postMessage(replyTo(task)))
}

function replyTo(task: Task): Reply {
  try {
    return { result: 'clip' in task ? listen(task.clip) : locate(task.locate) }
  } catch (error) {
    return { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) }
  }
}
