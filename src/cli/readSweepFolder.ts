import { join } from 'node:path'
import type { Problem } from '../../shared/base/problem'
import { printable } from '../../shared/base/shown'
import type { Line } from '../../shared/line/line'
import { readLineJson } from '../../shared/line/readLineJson'
import { readSweepCsv } from '../../shared/sweep/readSweepCsv'
import { rowsFromNames } from '../../shared/sweep/rowsFromNames'
import type { Sweep, SweepRow } from '../../shared/sweep/sweep'
import { CallError } from './callError'
import { folderNames, isThere, readText } from './files'

/** How clips lie that no sheet places, as the call told it. */
export interface ToldLayout {
  readonly startM: number | null
  readonly spacingM: number | null
}

export interface SweepFolder {
  readonly rows: readonly SweepRow[]
  readonly line: Line
  readonly problems: readonly Problem[]
}

/**
 * What a sweep folder tells before any clip is opened.
 *
 * @throws {CallError} no folder; no clip in it; neither sheet nor spacing.
 * @throws {FormatError} a sheet or line that cannot be right.
 */
export function readSweepFolder(folder: string, layout: ToldLayout): SweepFolder {
  const names = folderNames(folder)
  const sheet = nameLike(names, 'sweep.csv')
  const lineFile = nameLike(names, 'line.json')
  const sweep = sheet === null ? numberedSweep(folder, names, layout) : sheetSweep(folder, sheet, layout)
  const source = lineFile === null ? {} : readText(join(folder, lineFile), 'line')
  const { line, problems } = readLineJson(source, printable(join(folder, lineFile ?? 'line.json')))
  return { rows: sweep.rows, line, problems: [...sweep.problems, ...problems] }
}

/** The name itself, else one that differs in case only, as recorders and shares leave them. */
function nameLike(names: readonly string[], wanted: string): string | null {
  return names.find((name) => name === wanted) ?? names.find((name) => name.toLowerCase() === wanted) ?? null
}

function sheetSweep(folder: string, sheet: string, { startM, spacingM }: ToldLayout): Sweep {
  const path = join(folder, sheet)
  const { rows, problems } = readSweepCsv(readText(path, 'sheet'), printable(path))
  if (!rows.some((row) => isThere(join(folder, row.file)))) {
    const named = rows.length === 1 ? 'the clip it names is not' : `none of the ${rows.length} clips it names is`
    throw new CallError(`${printable(path)}: ${named} in the folder; copy the clips there or correct the file column`)
  }
  if (startM === null && spacingM === null) return { rows, problems }
  return { rows, problems: [...problems, { key: 'layout_not_used', severity: 'note', values: {} }] }
}

function numberedSweep(folder: string, names: readonly string[], { startM, spacingM }: ToldLayout): Sweep {
  const sweep = rowsFromNames(names, { startM: startM ?? 0, spacingM: spacingM ?? 1 })
  const shownName = printable(folder)
  if (sweep.rows.length === 0) {
    const left = sweep.problems.length === 0 ? 'holds no clip' : `holds no clip whose name tells its point`
    throw new CallError(`${shownName}: ${left}; name clips like 6.wav or 6-on.wav, or write a sweep.csv`)
  }
  if (spacingM === null) {
    throw new CallError(
      `${shownName}: has no sweep.csv; say how far apart the points are with --spacing or --spacing-ft`,
    )
  }
  return sweep
}
