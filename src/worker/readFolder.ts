import { decodeText } from '../../shared/base/decodeText'
import { FormatError } from '../../shared/base/errors'
import { readLineJson } from '../../shared/line/readLineJson'
import { readSweepCsv } from '../../shared/sweep/readSweepCsv'
import { rowsFromNames } from '../../shared/sweep/rowsFromNames'
import type { Sweep } from '../../shared/sweep/sweep'
import type { FolderTexts, ReadFolder } from './protocol'

/** Places of numbered clips before anybody said how far apart they are; only their numbers are shown. */
const UNSAID = { startM: 0, spacingM: 1 }

/**
 * What a sweep folder tells before any clip is opened.
 *
 * @throws {FormatError} a sheet or line that cannot be right; no clip in it.
 */
export function readFolder({ folder, paths, sheet, line, layout }: FolderTexts): ReadFolder {
  const sweep = sheet === null ? numbered(folder, paths, layout) : sheetSweep(sheet, paths)
  const told = line === null ? null : readLineJson(decodeText(new Uint8Array(line), 'line.json'), 'line.json')
  return {
    rows: sweep.rows,
    line: told?.line ?? null,
    sheetProblems: sweep.problems,
    lineProblems: told?.problems ?? [],
    needsLayout: sheet === null && layout === null,
  }
}

function sheetSweep(sheet: ArrayBuffer, paths: readonly string[]): Sweep {
  const sweep = readSweepCsv(decodeText(new Uint8Array(sheet), 'sweep.csv'), 'sweep.csv')
  const there = new Set(paths)
  if (sweep.rows.some((row) => there.has(row.file))) return sweep
  const count = sweep.rows.length
  const gone = count === 1 ? 'the clip it names is not there' : `none of the ${count} clips it names is there`
  throw new FormatError('sweep.csv', '', `${gone}; copy the clips beside it or correct the file column`)
}

/**
 * Clips by the numbers in their names. The reader of names knows WAV only; what a browser can decode beside it is read
 * under the name it would have as WAV.
 */
function numbered(folder: string, paths: readonly string[], layout: FolderTexts['layout']): Sweep {
  const names = new Map<string, string>()
  for (const path of paths.filter((each) => !each.includes('/'))) {
    const asWav = path.replace(DECODABLE, '.wav')
    const other = names.get(asWav)
    if (other !== undefined) {
      throw new FormatError(path, '', `has the same number as ${other}; keep one of them, or name it -take2`)
    }
    names.set(asWav, path)
  }
  const { rows, problems } = rowsFromNames([...names.keys()], layout ?? UNSAID)
  if (rows.length === 0) {
    throw new FormatError(folder, '', 'holds no clip whose name tells its point; name clips like 6.wav or 6-on.wav')
  }
  return {
    rows: rows.map((row) => ({ ...row, file: names.get(row.file)! })),
    problems: problems.map((problem) => {
      const file = names.get(String(problem.values.file))
      return file === undefined ? problem : { ...problem, values: { ...problem.values, file } }
    }),
  }
}

const DECODABLE = /\.(?:flac|ogg|oga|opus|mp3|m4a|aac|wave)$/i
