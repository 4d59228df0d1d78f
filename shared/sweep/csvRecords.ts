import { FormatError } from '../base/errors'

/** One record of a CSV file: its cells as text, and the line it begins in (1 is the header's). */
export interface CsvRecord {
  readonly cells: readonly string[]
  readonly row: number
}

/** Chosen: past any sheet a person keeps, and no more clips than can be fitted together. */
export const CSV_LIMITS = { characters: 8_000_000, records: 1000, cells: 200, cellCharacters: 10_000 } as const

/**
 * Cuts CSV text into records: RFC 4180, with any one-character delimiter and CRLF, LF or CR at a record's end.
 *
 * Lines that hold nothing are left out. A double quote inside an unquoted cell is a plain character, as in `2" pipe`.
 *
 * @param text      Without byte order mark.
 * @param delimiter One character.
 * @param fileName  For messages.
 * @param mostRecords Rows below the header that are read.
 * @throws {FormatError} quotes never closed, text after a closing quote, or more than `CSV_LIMITS`; with the row.
 * @see IETF RFC 4180, section 2. [RFC4180] in sources.ts
 */
export function csvRecords(
  text: string,
  delimiter: string,
  fileName: string,
  mostRecords: number = CSV_LIMITS.records,
): CsvRecord[] {
  if (text.length > CSV_LIMITS.characters) {
    const limit = `at most ${CSV_LIMITS.characters} are read`
    throw new FormatError(fileName, '', `holds ${text.length} characters, and ${limit}; split the sheet`)
  }
  const cursor: Cursor = { text, delimiter, fileName, at: 0, row: 1 }
  const records: CsvRecord[] = []
  while (cursor.at < text.length) {
    const record = readRecord(cursor)
    if (record.cells.every((cell) => cell.trim() === '')) continue
    if (records.length > mostRecords) {
      throw new FormatError(fileName, `row ${record.row}`, `at most ${mostRecords} rows are read; split the sheet`)
    }
    records.push(record)
  }
  return records
}

interface Cursor {
  readonly text: string
  readonly delimiter: string
  readonly fileName: string
  at: number
  row: number
}

function readRecord(cursor: Cursor): CsvRecord {
  const { row } = cursor
  const cells: string[] = []
  for (;;) {
    const cell = cursor.text[cursor.at] === '"' ? quotedCell(cursor) : plainCell(cursor)
    if (cell.length > CSV_LIMITS.cellCharacters) {
      const limit = `at most ${CSV_LIMITS.cellCharacters} are read`
      fail(cursor, row, `a cell holds ${cell.length} characters, and ${limit}; shorten it`)
    }
    cells.push(cell)
    if (cells.length > CSV_LIMITS.cells) fail(cursor, row, `has more than ${CSV_LIMITS.cells} cells; remove some`)
    if (cursor.text[cursor.at] !== cursor.delimiter) break
    cursor.at++
  }
  endLine(cursor)
  return { cells, row }
}

function plainCell(cursor: Cursor): string {
  const from = cursor.at
  while (cursor.at < cursor.text.length && !isCellEnd(cursor)) cursor.at++
  return cursor.text.slice(from, cursor.at)
}

function quotedCell(cursor: Cursor): string {
  const { text } = cursor
  const startRow = cursor.row
  let cell = ''
  for (;;) {
    const close = text.indexOf('"', cursor.at + 1)
    if (close < 0) fail(cursor, startRow, 'a double quote opens a cell here and none closes it; add one')
    const piece = text.slice(cursor.at + 1, close)
    cell += piece
    cursor.row += piece.split(/\r\n|\r|\n/).length - 1
    cursor.at = close + 1
    if (text[cursor.at] !== '"') break
    cell += '"'
  }
  if (cursor.at < text.length && !isCellEnd(cursor)) {
    fail(cursor, startRow, 'text follows a closing double quote; write quotes inside a quoted cell twice')
  }
  return cell
}

function isCellEnd({ text, at, delimiter }: Cursor): boolean {
  return text[at] === delimiter || text[at] === '\n' || text[at] === '\r'
}

function endLine(cursor: Cursor): void {
  if (cursor.at >= cursor.text.length) return
  cursor.at += cursor.text.startsWith('\r\n', cursor.at) ? 2 : 1
  cursor.row++
}

function fail(cursor: Cursor, row: number, mend: string): never {
  throw new FormatError(cursor.fileName, `row ${row}`, mend)
}
