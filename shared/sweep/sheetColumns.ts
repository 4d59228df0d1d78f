import { FormatError } from '../base/errors'
import { nearestWord } from '../base/nearestWord'
import { shown } from '../base/shown'
import { csvRecords } from './csvRecords'

/** Columns this version knows. */
export const COLUMNS = [
  'point',
  'along_m',
  'along_ft',
  'file',
  'air',
  'take',
  'sweep',
  'offset_m',
  'time',
  'contact',
  'air_kpa',
  'processing',
  'device_hz',
  'ended_by',
  'note',
] as const
export type Column = (typeof COLUMNS)[number]

const DELIMITERS = [',', ';', '\t'] as const
export type Delimiter = (typeof DELIMITERS)[number]

/** The header of a sheet, understood. */
export interface SheetColumns {
  readonly delimiter: Delimiter
  /** Where each known column stands, counted from 0. */
  readonly at: ReadonlyMap<Column, number>
  /** Columns that are not known, with their names as written; one without a name is `column_` and its number. */
  readonly unknown: readonly { readonly name: string; readonly at: number; readonly named: boolean }[]
  /** Cells in the header. */
  readonly width: number
}

/**
 * Reads a sheet's header: its delimiter and its columns.
 *
 * The delimiter is the one under which most columns are known. Names are taken in any case and with spaces around them.
 * A column without a name (spreadsheets leave such) is called by its number.
 *
 * @param text Without byte order mark.
 * @throws {FormatError} no header that can be read; `point`, `file`, or `along_m` and `along_ft`, missing; both of those; a name twice.
 */
export function sheetColumns(text: string, fileName: string): SheetColumns {
  const lines = text.slice(0, MOST_HEADER).split(/\r\n|\r|\n/)
  const firstLine = lines.find((line) => line.trim() !== '')
  if (firstLine === undefined) {
    throw new FormatError(fileName, '', 'is empty; the first row must name the columns point, along_m and file')
  }
  const headers = DELIMITERS.map((delimiter) => ({ delimiter, names: headerNames(firstLine, delimiter) }))
  const knownCount = (names: readonly string[]) => names.filter((name) => isColumn(name.toLowerCase())).length
  const header = headers.reduce((best, next) => (knownCount(next.names) > knownCount(best.names) ? next : best))
  const columns = sortColumns(header.names, header.delimiter, fileName)
  requireColumns(columns, header.names, fileName)
  return columns
}

const MOST_HEADER = 100_000 // characters; chosen: a header past this is none

/** Under a wrong delimiter quotes may stand where they cannot be, which says no more than that it is the wrong one. */
function headerNames(firstLine: string, delimiter: string): string[] {
  try {
    return csvRecords(firstLine, delimiter, '').flatMap((record) => record.cells.map((cell) => cell.trim()))
  } catch (error) {
    if (error instanceof FormatError) return []
    throw error
  }
}

function isColumn(name: string): name is Column {
  return (COLUMNS as readonly string[]).includes(name)
}

function sortColumns(names: readonly string[], delimiter: Delimiter, fileName: string): SheetColumns {
  const at = new Map<Column, number>()
  const unknown: { name: string; at: number; named: boolean }[] = []
  const seen = new Set<string>()
  for (const [index, told] of names.entries()) {
    const name = told === '' ? `column_${index + 1}` : told
    const key = name.toLowerCase()
    if (seen.has(key))
      throw new FormatError(fileName, 'row 1', `the column ${shown(name)} stands twice; keep one of them`)
    seen.add(key)
    if (isColumn(key)) at.set(key, index)
    else unknown.push({ name, at: index, named: told !== '' })
  }
  return { delimiter, at, unknown, width: names.length }
}

function requireColumns(columns: SheetColumns, names: readonly string[], fileName: string): void {
  const { at } = columns
  if (at.has('along_m') && at.has('along_ft')) {
    throw new FormatError(fileName, 'row 1', 'along_m and along_ft are both there; keep one of them')
  }
  const missing = at.has('point') ? (at.has('file') ? null : 'file') : 'point'
  const along = at.has('along_m') || at.has('along_ft')
  if (missing === null && along) return
  const wanted = missing ?? 'along_m'
  const near = names.find((name) => nearestWord(name, wanted === 'along_m' ? ['along_m', 'along_ft'] : [wanted]))
  const hint = near === undefined || near === '' ? 'name it in the first row' : `is ${shown(near)} meant?`
  const either = wanted === 'along_m' ? ' or along_ft' : ''
  throw new FormatError(fileName, 'row 1', `the column ${wanted}${either} is missing; ${hint}`)
}
