import { Zip, ZipDeflate, ZipPassThrough } from 'fflate'
import type { FileToPack } from './protocol'

/** The one date of all packed files, read in local time: the same files make the same zip, in any zone and at any hour. */
const packedOn = () => new Date(1980, 0, 1)
const TEXT = /\.(?:csv|json|txt|md)$/i

/**
 * Packs files in the order given: sound as it is, as it hardly shrinks, text deflated. One file after the other is held.
 *
 * @param onDone Called with how many files are in.
 */
export async function zip(files: readonly FileToPack[], onDone: (done: number) => void): Promise<Blob> {
  const parts: Blob[] = []
  const packed = new Promise<Blob>((resolve, reject) => {
    const out = new Zip((error, chunk, isLast) => {
      if (error !== null) return reject(error)
      parts.push(new Blob([chunk as Uint8Array<ArrayBuffer>])) // a browser may keep it on disk
      if (isLast) resolve(new Blob(parts, { type: 'application/zip' }))
    })
    addAll(out, files, onDone).catch(reject)
  })
  return packed
}

async function addAll(out: Zip, files: readonly FileToPack[], onDone: (done: number) => void): Promise<void> {
  for (const [done, { path, bytes }] of files.entries()) {
    onDone(done)
    const entry = TEXT.test(path) ? new ZipDeflate(path, { level: 6 }) : new ZipPassThrough(path)
    entry.mtime = packedOn()
    out.add(entry)
    entry.push(new Uint8Array(await bytes.arrayBuffer()), true)
  }
  out.end()
}
