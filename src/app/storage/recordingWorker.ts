import type { ChunkMessage } from '../record/captureMessages'
import { assembleRecording } from './assembleRecording'
import { type Database, isFull, openDatabase } from './database'
import type { RecordingCall, RecordingReply } from './recordingCalls'
import { forgetRecording, keepChunk } from './recordings'

// A worker of its own: neither the page nor the work on clips holds a chunk up on its way.

const reply = (message: RecordingReply) => self.postMessage(message)

/** Chunks are kept one after the other, in their order. */
let turn: Promise<void> = Promise.resolve()

const opened = openDatabase({ onOlderBlocked: () => undefined, beforeNewer: () => turn })
opened.catch(() => undefined) // each use tells

async function keep({ id, number, channels, isLast }: ChunkMessage): Promise<void> {
  try {
    if ((channels[0]?.length ?? 0) > 0) await keepChunk(await opened, id, { number, channels })
    reply({ kind: 'durable', id, isLast })
  } catch (error) {
    reply({ kind: 'lost', id, full: isFull(error), isLast })
  }
}

async function answer(id: string, run: (database: Database) => Promise<RecordingReply>): Promise<void> {
  try {
    reply(await run(await opened))
  } catch (error) {
    reply({ kind: 'failed', id, full: isFull(error), why: String(error) })
  }
}

self.addEventListener('message', ({ data }: MessageEvent<RecordingCall>) => {
  if (data.kind === 'listen') {
    data.port.onmessage = (event: MessageEvent<ChunkMessage>) => {
      turn = turn.then(() => keep(event.data))
    }
    return
  }
  const id = data.kind === 'assemble' ? data.recording.id : data.id
  turn = turn.then(() =>
    answer(id, async (database) => {
      if (data.kind === 'assemble') {
        return { kind: 'assembled', id, assembled: await assembleRecording(database, data.recording) }
      }
      await forgetRecording(database, id)
      return { kind: 'forgotten', id }
    }),
  )
})
