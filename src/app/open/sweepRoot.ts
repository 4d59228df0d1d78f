import { FormatError } from '../../../shared/base/errors'
import { printable } from '../../../shared/base/shown'
import type { Source } from './source'

/** A sweep folder found among the files: its texts, and its other files by their path from it on. */
export interface SweepRoot {
  readonly sheet: Blob | null
  readonly line: Blob | null
  readonly files: ReadonlyMap<string, Blob>
}

/**
 * The sweep folder in what was opened: where the sheet nearest the top lies, else the folder nearest the top that holds
 * sound.
 *
 * @throws {FormatError} no file at all; two folders that could both be meant.
 */
export function sweepRoot({ name, files }: Source): SweepRoot {
  if (files.length === 0) throw new FormatError(printable(name), '', 'holds no file; open the folder with the clips')
  const sheets = files.map(({ path }) => path).filter((path) => /(?:^|\/)sweep\.csv$/i.test(path))
  const folder = sheets.length > 0 ? nearestTop(name, sheets) : nearestTop(name, soundsOf(files) ?? [''])
  const within = files.filter(({ path }) => path.startsWith(folder))
  const byPath = new Map(within.map(({ path, bytes }) => [path.slice(folder.length), bytes]))
  return {
    sheet: byPath.get(nameLike([...byPath.keys()], 'sweep.csv') ?? '') ?? null,
    line: byPath.get(nameLike([...byPath.keys()], 'line.json') ?? '') ?? null,
    files: byPath,
  }
}

const SOUND = /\.(?:wav|wave|bwf|rf64|flac|ogg|oga|opus|mp3|m4a|aac)$/i

function soundsOf(files: Source['files']): string[] | null {
  const sounds = files.map(({ path }) => path).filter((path) => SOUND.test(path))
  return sounds.length === 0 ? null : sounds
}

/** The folder of the paths with the fewest steps, with its slash; empty for the top itself. */
function nearestTop(name: string, paths: readonly string[]): string {
  const folders = [...new Set(paths.map((path) => path.slice(0, path.lastIndexOf('/') + 1)))]
  const depth = (folder: string) => folder.split('/').length
  const least = folders.reduce((low, folder) => Math.min(low, depth(folder)), Number.POSITIVE_INFINITY)
  const [first, second] = folders.filter((folder) => depth(folder) === least)
  if (second !== undefined) {
    const both = `${printable(first!)} and ${printable(second)}`
    throw new FormatError(printable(name), '', `holds several sweep folders, ${both}; open one at a time`)
  }
  return first ?? ''
}

/** The name itself, else one that differs in case only, as recorders and shares leave them. */
function nameLike(names: readonly string[], wanted: string): string | null {
  return names.find((name) => name === wanted) ?? names.find((name) => name.toLowerCase() === wanted) ?? null
}
