import { gunzipSync } from 'node:zlib'

const HEADER_BYTES = 204
const ENTRY_BYTES = 316

/**
 * One file out of a packed group (`.ocg`): gzip under two changed magic bytes, then folders within folders, each a
 * scrambled header, a table of entries, and the contents one after the other.
 *
 * The layout was worked out on the package's own file; the game's unpacker gives the same files.
 *
 * @param packed The whole group file.
 * @param path   Path inside, `/` between folders.
 */
export function readGroup(packed: Buffer, path: string): Buffer {
  const gzip = Buffer.from(packed)
  gzip[0] = 0x1f
  gzip[1] = 0x8b
  const bytes = gunzipSync(gzip)
  let start = 0
  for (const step of path.split('/')) {
    const found = entries(bytes, start).find((entry) => entry.name === step)
    if (found === undefined) throw new Error(`${path}: no ${step} in the group`)
    if (!found.isFolder) return bytes.subarray(found.start, found.start + found.sizeBytes)
    start = found.start
  }
  throw new Error(`${path} is a folder of the group`)
}

function entries(bytes: Buffer, start: number) {
  const header = unscramble(bytes.subarray(start, start + HEADER_BYTES))
  const count = header.readInt32LE(36)
  const contents = start + HEADER_BYTES + count * ENTRY_BYTES
  return Array.from({ length: count }, (_, i) => {
    const at = start + HEADER_BYTES + i * ENTRY_BYTES
    const name = bytes.toString('latin1', at, bytes.indexOf(0, at))
    return {
      name,
      isFolder: bytes.readInt32LE(at + 264) !== 0,
      sizeBytes: bytes.readInt32LE(at + 268),
      start: contents + bytes.readInt32LE(at + 276),
    }
  })
}

function unscramble(scrambled: Buffer): Buffer {
  const header = Buffer.from(scrambled.map((byte) => byte ^ 237))
  for (let i = 0; i + 2 < header.length; i += 3) {
    const first = header[i]!
    header[i] = header[i + 2]!
    header[i + 2] = first
  }
  return header
}
