import {
  appendFileSync,
  closeSync,
  constants,
  existsSync,
  fstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readSync,
  realpathSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join, relative, sep } from 'node:path'
import { decodeText } from '../../shared/base/decodeText'
import type { Problem } from '../../shared/base/problem'
import { printable } from '../../shared/base/shown'
import type { WordKey } from '../../shared/words/words'
import { CallError } from './callError'

// Beside byteFiles.ts, nothing else of the command line touches the disk.

/** Largest file that is opened. Chosen: the longest clip that is read, in stereo with 64-bit floats, is 480 MB. */
const MOST_CLIP_BYTES = 600e6
/** Chosen: what their readers take, in bytes. */
const MOST_TEXT_BYTES = { sheet: 32e6, line: 4e6, model: 8e6, measured: 200e6, job: 200e6 }

/** Names in a folder, in the order of their code units. @throws {CallError} not there, no folder, not readable. */
export function folderNames(folder: string): string[] {
  const shownName = printable(folder)
  let stat: ReturnType<typeof statSync>
  try {
    stat = statSync(folder)
  } catch (error) {
    throw new CallError(`${shownName}: ${reason(error, 'there is no such folder')}; check the name`)
  }
  if (!stat.isDirectory()) {
    throw new CallError(`${shownName}: is no folder; for single clips use yardhark inspect`)
  }
  try {
    return readdirSync(folder).sort()
  } catch (error) {
    throw new CallError(`${shownName}: ${reason(error, 'cannot be read')}; check who may read it`)
  }
}

/** A text file in UTF-8. @throws {CallError} not readable. @throws {FormatError} no UTF-8. */
export function readText(path: string, kind: keyof typeof MOST_TEXT_BYTES): string {
  const mostBytes = MOST_TEXT_BYTES[kind]
  const opened = openRegular(path, mostBytes)
  if (!opened.ok) throw new CallError(`${printable(path)}: ${textTrouble(opened.trouble, mostBytes)}`)
  return decodeText(opened.bytes, printable(path))
}

function textTrouble(trouble: Trouble, mostBytes: number): string {
  switch (trouble) {
    case 'missing':
      return 'is not there; check the name'
    case 'not readable':
      return 'cannot be read; check who may read it'
    case 'not regular':
      return 'is no file with text in it; put a plain file there'
    case 'too large':
      return `is larger than ${mostBytes / 1e6} MB, and no sheet or line is; check that it is the right file`
  }
}

/** The bytes of a clip, or why there are none. */
export type OpenedClip = { readonly bytes: Uint8Array } | { readonly problem: Problem }

/**
 * Opens a clip of a folder.
 *
 * Links are followed only inside the folder, and nothing but plain files is opened, so that a sheet from a stranger can
 * neither show what lies elsewhere nor hang on a pipe.
 *
 * @param file Path relative to the folder, already checked to stay in it.
 */
export function openClip(folder: string, file: string): OpenedClip {
  const path = join(folder, file)
  try {
    const real = realpathSync(path)
    const root = realpathSync(folder)
    if (!real.startsWith(root.endsWith(sep) ? root : root + sep)) return { problem: spoilt('file_outside') }
  } catch {
    return { problem: missingClip(path) }
  }
  return openFile(path)
}

/** Opens a clip wherever it lies. */
export function openFile(path: string): OpenedClip {
  const opened = openRegular(path, MOST_CLIP_BYTES)
  if (opened.ok) return { bytes: opened.bytes }
  switch (opened.trouble) {
    case 'missing':
      return { problem: missingClip(path) }
    case 'not readable':
      return { problem: spoilt('unreadable', { why: 'this user may not open it; check its permissions' }) }
    case 'not regular':
      return { problem: spoilt('file_not_regular') }
    case 'too large':
      return {
        problem: spoilt('file_too_large', { size_mb: Math.round(opened.size / 1e6), most_mb: MOST_CLIP_BYTES / 1e6 }),
      }
  }
}

/** True when something, anything, has this name. */
export function isThere(path: string): boolean {
  return existsSync(path)
}

/**
 * Makes a folder ready to be written into.
 *
 * @throws {CallError} not empty and not forced; no folder; may not be written.
 */
export function prepareFolder(folder: string, force: boolean): void {
  const shownName = printable(folder)
  if (isThere(folder) && !statSync(folder).isDirectory()) {
    throw new CallError(`${shownName}: a file stands where a folder should be; name another folder`)
  }
  if (isThere(folder) && folderNames(folder).length > 0 && !force) {
    throw new CallError(`${shownName}: is not empty; name another folder, or add --force to write into this one`)
  }
  try {
    mkdirSync(folder, { recursive: true })
  } catch (error) {
    throw new CallError(`${shownName}: ${reason(error, 'cannot be made')}; name another folder`)
  }
}

/** Writes a file into a folder. @throws {CallError} disk full, no permission. */
export function writeFile(folder: string, path: string, bytes: Uint8Array): void {
  const full = join(folder, path)
  try {
    mkdirSync(dirname(full), { recursive: true })
    writeFileSync(full, bytes)
  } catch (error) {
    throw new CallError(`${printable(full)}: ${reason(error, 'cannot be written')}; name another folder`)
  }
}

/** Adds text to the end of a file, which is made when it is not there. @throws {CallError} disk full, no permission. */
export function appendText(path: string, text: string): void {
  try {
    mkdirSync(dirname(path), { recursive: true })
    appendFileSync(path, text)
  } catch (error) {
    throw new CallError(`${printable(path)}: ${reason(error, 'cannot be written')}; name another folder with --cache`)
  }
}

/** Writes a file by its name. @throws {CallError} it is there and not forced; disk full, no permission. */
export function writeFileAt(path: string, bytes: Uint8Array, force: boolean): void {
  if (isThere(path) && !force) {
    throw new CallError(`${printable(path)}: is there already; name another file, or add --force to write over it`)
  }
  writeFile('', path, bytes)
}

/** Whether a folder has this name. */
export function isFolder(path: string): boolean {
  return isThere(path) && statSync(path).isDirectory()
}

/** Most files that are looked through for clips and photos. Chosen: well past any job. */
const MOST_FILES = 50_000

/** Paths of all plain files in a folder and the folders in it, relative to it. */
export function filesBelow(folder: string): string[] {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())
  return entries.slice(0, MOST_FILES).map((entry) => relative(folder, join(entry.parentPath, entry.name)))
}

type Trouble = 'missing' | 'not readable' | 'not regular' | 'too large'
type Opened =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly trouble: Trouble; readonly size: number }

/** Without waiting on pipes, and without reading past the size the file had when it was opened. */
function openRegular(path: string, mostBytes: number): Opened {
  let handle: number
  try {
    handle = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0))
  } catch (error) {
    const gone = ['ENOENT', 'ENOTDIR', 'ENAMETOOLONG', 'ELOOP'].includes(codeOf(error))
    return { ok: false, trouble: gone ? 'missing' : 'not readable', size: 0 }
  }
  try {
    const stat = fstatSync(handle)
    if (!stat.isFile()) return { ok: false, trouble: 'not regular', size: 0 }
    if (stat.size > mostBytes) return { ok: false, trouble: 'too large', size: stat.size }
    return { ok: true, bytes: readAll(handle, stat.size) }
  } catch {
    return { ok: false, trouble: 'not readable', size: 0 }
  } finally {
    closeSync(handle)
  }
}

function readAll(handle: number, size: number): Uint8Array {
  const bytes = new Uint8Array(size)
  let at = 0
  while (at < size) {
    const count = readSync(handle, bytes, at, size - at, at)
    if (count === 0) break
    at += count
  }
  return bytes.subarray(0, at)
}

/** A name that differs only in case or ending is most likely the one that was meant. */
function missingClip(path: string): Problem {
  const stem = (name: string) => name.toLowerCase().replace(/\.\w+$/, '')
  let names: string[] = []
  try {
    names = readdirSync(dirname(path)).sort()
  } catch {}
  const near = names.find((name) => stem(name) === stem(basename(path)))
  return near === undefined ? spoilt('missing_file') : spoilt('missing_file_like', { near: printable(near) })
}

function spoilt(key: WordKey, values: Problem['values'] = {}): Problem {
  return { key, severity: 'spoilt', values }
}

function codeOf(error: unknown): string {
  return (error as NodeJS.ErrnoException).code ?? ''
}

function reason(error: unknown, otherwise: string): string {
  const known: Readonly<Record<string, string>> = {
    EACCES: 'this user may not open it',
    EPERM: 'this user may not open it',
    ENOSPC: 'the disk is full',
    EROFS: 'the disk is read-only',
    ENOTDIR: 'a file stands where a folder should be',
    EEXIST: 'a file stands where a folder should be',
  }
  return known[codeOf(error)] ?? otherwise
}
