import { parentPort } from 'node:worker_threads'
import { locate } from '../../shared/locate/locate'
import type { Reply, Task } from './analysts'
import { listen, listenTo } from './listen'
import { measureSound, sha256OfClip } from './measureSound'

/** What runs in a thread of its own: one task after another, so that the main thread stays free to be interrupted. */
export function serveTasks(): void {
  parentPort!.on('message', (task: Task) => parentPort!.postMessage(replyTo(task)))
}

function replyTo(task: Task): Reply {
  try {
    return { result: resultOf(task) }
  } catch (error) {
    return { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) }
  }
}

function resultOf(task: Task) {
  if ('clip' in task) return listen(task.clip)
  if ('hear' in task) return listenTo(task.hear.bytes, task.hear.file)
  if ('sha256Of' in task) return sha256OfClip(task.sha256Of)
  return 'sound' in task ? measureSound(task.sound) : locate(task.locate)
}
