import {
  closeSync,
  existsSync,
  fstatSync,
  mkdtempSync,
  openSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { printable } from '../../shared/base/shown'
import type { ByteSource } from '../../shared/jobfile/byteSource'
import { CallError } from './callError'

// Beside files.ts, nothing else of the command line touches the disk.

/** A file that is read piece by piece. */
export interface OpenedFile extends ByteSource {
  close(): void
}

/** @throws {CallError} not there, no plain file, not readable. */
export function openByteFile(path: string): OpenedFile {
  let handle: number
  try {
    handle = openSync(path, 'r')
  } catch {
    throw new CallError(`${printable(path)}: is not there or cannot be read; check the name`)
  }
  const stat = fstatSync(handle)
  if (!stat.isFile()) {
    closeSync(handle)
    throw new CallError(`${printable(path)}: is no file; name a job file, which ends in .zip`)
  }
  return {
    size: stat.size,
    read: async (from, to) => readPiece(handle, from, to),
    close: () => closeSync(handle),
  }
}

function readPiece(handle: number, from: number, to: number): Uint8Array {
  const bytes = new Uint8Array(to - from)
  let at = 0
  while (at < bytes.length) {
    const count = readSync(handle, bytes, at, bytes.length - at, from + at)
    if (count === 0) break
    at += count
  }
  return bytes.subarray(0, at)
}

/**
 * Writes pieces into a file, which is there under its name only when it is whole.
 *
 * @throws {CallError} it is there already and not forced; the disk is full, no permission.
 */
export async function writeByteFile(path: string, force: boolean, pieces: AsyncIterable<Uint8Array>): Promise<void> {
  if (existsSync(path) && !force) {
    throw new CallError(`${printable(path)}: is there already; name another file, or add --force to write over it`)
  }
  const unfinished = `${path}.part`
  let handle: number | null = null
  try {
    handle = openSync(unfinished, 'w')
    for await (const piece of pieces) for (let at = 0; at < piece.length; ) at += writeSync(handle, piece, at)
    closeSync(handle)
    handle = null
    renameSync(unfinished, path)
  } catch (error) {
    if (handle !== null) closeSync(handle)
    rmSync(unfinished, { force: true })
    if ((error as NodeJS.ErrnoException).code === undefined) throw error
    throw new CallError(`${printable(path)}: cannot be written; is the disk full, or the folder not there?`)
  }
}

/** Sounds and photos of an opened job file, by digest, on the disk until the command ends. */
export class TemporaryBytes {
  private readonly folder = mkdtempSync(join(tmpdir(), 'yardhark-'))

  keep(sha256: string, bytes: Uint8Array): void {
    writeFileSync(join(this.folder, sha256), bytes)
  }

  load(sha256: string): Uint8Array | null {
    const path = join(this.folder, sha256)
    return existsSync(path) ? new Uint8Array(readFileSync(path)) : null
  }

  close(): void {
    rmSync(this.folder, { recursive: true, force: true })
  }
}
