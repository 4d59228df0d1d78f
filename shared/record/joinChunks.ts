/** A quarter second of a recording as it was made durable: one array a channel. */
export interface Chunk {
  /** From 0, without a gap. */
  readonly number: number
  readonly channels: readonly Float32Array[]
}

/** Length of a chunk, s: after a kill at most the unfinished one and one on its way are lost. */
export const CHUNK_S = 0.25

/**
 * The whole recording out of its chunks, up to the first one that is missing. Where the microphone went from one to two
 * channels, only those that are there all through are kept.
 *
 * @param chunks In any order.
 * @returns One array a channel; no channel when there is no first chunk.
 */
export function joinChunks(chunks: readonly Chunk[]): Float32Array[] {
  const inOrder = [...chunks].sort((a, b) => a.number - b.number).filter((chunk, i) => chunk.number === i)
  const [first] = inOrder
  if (first === undefined) return []
  const channelCount = inOrder.reduce((least, { channels }) => Math.min(least, channels.length), first.channels.length)
  const frames = inOrder.reduce((sum, { channels }) => sum + channels[0]!.length, 0)
  return Array.from({ length: channelCount }, (_, channel) => {
    const samples = new Float32Array(frames)
    let at = 0
    for (const { channels } of inOrder) {
      samples.set(channels[channel]!, at)
      at += channels[channel]!.length
    }
    return samples
  })
}
