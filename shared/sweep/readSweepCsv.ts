import { FormatError } from '../base/errors'
import type { Problem } from '../base/problem'
import { printable, shown } from '../base/shown'
import { METRES_PER_FOOT } from '../base/units'
import { type CsvRecord, csvRecords } from './csvRecords'
import { isoToSeconds } from './isoTime'
import { EARLY_ENDS, PROCESSING } from './phoneAccount'
import { safePath } from './safePath'
import { type Column, type SheetColumns, sheetColumns } from './sheetColumns'
import { CONTACTS, type Contact, type Sweep, type SweepRow } from './sweep'

/** Chosen: far past any yard; what is larger is a slip of the keyboard. */
const MOST_ALONG_M = 10_000
const MOST_AIR_KPA = 10_000
const MOST_NUMBER = 1_000_000
const MOST_RATE_HZ = 10_000_000

/**
 * Reads the sheet of a sweep folder.
 *
 * @param text     The whole `sweep.csv`, with or without byte order mark; see `decodeText` for bytes.
 * @param fileName For messages.
 * @returns Rows in the sheet's order, and what is odd in it without being wrong.
 * @throws {FormatError} a missing or doubled column, text for a number, two rows of one point, take, sweep and air, a
 *   path that leaves the folder, a time without offset, anything over-long. The message names the row (its line in the
 *   file; the header is row 1), the column and the mend.
 * @see IETF RFC 4180. [RFC4180] in sources.ts
 */
export function readSweepCsv(text: string, fileName: string): Sweep {
  const plain = text.startsWith('\ufeff') ? text.slice(1) : text
  const header = sheetColumns(plain, fileName)
  const [, ...records] = csvRecords(plain, header.delimiter, fileName)
  const columns = withoutEmpty(header, records)
  if (records.length === 0) throw new FormatError(fileName, '', 'names no clip; write one row for each clip')
  const problems: Problem[] = []
  const rows = records.map((record) => readRow(new Cells(record, columns, fileName), columns, problems))
  refuseDuplicates(rows, records, fileName)
  noteOddities(rows, problems)
  if (columns.unknown.some(({ name }) => name === '__proto__')) {
    problems.push({ key: 'sheet_column_left_out', severity: 'note', values: { name: '__proto__' } })
  }
  return { rows, problems }
}

/** Spreadsheets leave columns that hold nothing, not even a name. */
function withoutEmpty(columns: SheetColumns, records: readonly CsvRecord[]): SheetColumns {
  const kept = columns.unknown.filter(
    ({ at, named }) => named || records.some((record) => (record.cells[at] ?? '').trim() !== ''),
  )
  return { ...columns, unknown: kept }
}

function readRow(cells: Cells, columns: SheetColumns, problems: Problem[]): SweepRow {
  const file = safePath(cells.text('file'))
  if (!file.ok)
    throw cells.error('file', cells.text('file') === '' ? file.mend : `${shown(cells.text('file'))} ${file.mend}`)
  return {
    point: cells.whole('point') ?? cells.missing('point'),
    alongM: readAlong(cells, columns),
    file: file.path,
    air: readAir(cells),
    take: cells.whole('take') ?? 1,
    sharedTake: columns.at.has('take'),
    sweep: cells.text('sweep') || '1',
    offsetM: cells.number('offset_m', -MOST_ALONG_M, MOST_ALONG_M) ?? 0,
    timeS: readTime(cells),
    contact: readContact(cells, problems),
    airKpa: cells.number('air_kpa', 0, MOST_AIR_KPA),
    note: cells.raw('note'),
    ...readPhone(cells, problems),
    unknown: cells.unknown(),
  }
}

function readAlong(cells: Cells, columns: SheetColumns): number {
  const column = columns.at.has('along_m') ? 'along_m' : 'along_ft'
  const unit = column === 'along_m' ? 1 : METRES_PER_FOOT
  return (cells.number(column, -MOST_ALONG_M / unit, MOST_ALONG_M / unit) ?? cells.missing(column)) * unit
}

function readAir(cells: Cells): 'on' | 'off' {
  const told = cells.text('air').toLowerCase()
  if (told === '' || told === 'on') return 'on'
  if (told === 'off') return 'off'
  throw cells.error('air', `is ${shown(cells.text('air'))}; write on or off`)
}

function readTime(cells: Cells): number | null {
  const told = cells.text('time')
  if (told === '') return null
  const timeS = isoToSeconds(told)
  if (timeS === null) {
    throw cells.error('time', `is ${shown(told)}; write date, time and offset like 2026-05-04T09:30:00+02:00`)
  }
  return timeS
}

function readContact(cells: Cells, problems: Problem[]): Contact | null {
  const told = cells.text('contact')
  if (told === '') return null
  const contact = CONTACTS.find((known) => known === told.toLowerCase())
  if (contact !== undefined) return contact
  const values = { row: cells.record.row, value: printable(told, 60), known: CONTACTS.join(', ') }
  problems.push({ key: 'sheet_contact_unknown', severity: 'note', values })
  return 'other'
}

/** Words that this version does not know are named and left out: nothing can be made of them. */
function readPhone(cells: Cells, problems: Problem[]): Pick<SweepRow, 'phone'> {
  const [words, unknown] = split(
    cells
      .text('processing')
      .toLowerCase()
      .split(/[\s,;]+/),
    PROCESSING,
  )
  const [ends, unknownEnds] = split([cells.text('ended_by').toLowerCase()], EARLY_ENDS)
  for (const value of [...unknown, ...unknownEnds]) {
    const values = {
      row: cells.record.row,
      value: printable(value, 60),
      known: [...PROCESSING, ...EARLY_ENDS].join(', '),
    }
    problems.push({ key: 'sheet_phone_unknown', severity: 'note', values })
  }
  const deviceHz = cells.number('device_hz', 1, MOST_RATE_HZ)
  const endedBy = ends[0] ?? null
  if (words.length === 0 && deviceHz === null && endedBy === null) return {}
  return { phone: { processing: PROCESSING.filter((word) => words.includes(word)), deviceHz, endedBy } }
}

function split<Word extends string>(told: readonly string[], known: readonly Word[]): [Word[], string[]] {
  const isKnown = (word: string): word is Word => (known as readonly string[]).includes(word)
  return [told.filter(isKnown), told.filter((word) => word !== '' && !isKnown(word))]
}

/** The cells of one row by column name, with the row's place for messages. Lives while its row is read. */
class Cells {
  constructor(
    readonly record: CsvRecord,
    private readonly columns: SheetColumns,
    private readonly fileName: string,
  ) {
    const { width } = columns
    const extra = record.cells.findIndex((cell, i) => i >= width && cell.trim() !== '')
    if (extra < 0) return
    const mend = `has ${record.cells.length} cells and the header ${width}; put text that holds a delimiter in double quotes`
    const comma = columns.delimiter === ',' ? ', and numbers with a point' : ''
    throw new FormatError(fileName, `row ${record.row}`, `${mend}${comma}`)
  }

  raw(column: Column): string {
    return this.record.cells[this.columns.at.get(column) ?? -1] ?? ''
  }

  text(column: Column): string {
    return this.raw(column).trim()
  }

  number(column: Column, low: number, high: number): number | null {
    const told = this.text(column)
    if (told === '') return null
    const plain = told.replace('\u2212', '-') // the minus sign that word processors make of a hyphen
    const decimal = this.columns.delimiter !== ',' && !plain.includes('.') ? plain.replace(',', '.') : plain
    const value = DECIMAL.test(decimal) ? Number(decimal) : Number.NaN
    if (Number.isNaN(value)) throw this.error(column, `is ${shown(told)}; write a number, like 3.5`)
    if (!(value >= low && value <= high)) {
      throw this.error(column, `is ${shown(told)}; a number from ${Math.ceil(low)} to ${Math.floor(high)} is expected`)
    }
    return value + 0
  }

  whole(column: Column): number | null {
    const told = this.text(column)
    if (told === '') return null
    const value = /^[+-]?\d+(?:\.0+)?$/.test(told) ? Number(told) : Number.NaN
    if (Number.isNaN(value)) throw this.error(column, `is ${shown(told)}; write a whole number, like 6`)
    if (Math.abs(value) > MOST_NUMBER) {
      throw this.error(column, `is ${shown(told)}; a whole number up to ${MOST_NUMBER} is expected`)
    }
    return value + 0
  }

  unknown(): Readonly<Record<string, string>> {
    const kept = this.columns.unknown.filter(({ name }) => name !== '__proto__')
    return Object.fromEntries(kept.map(({ name, at }) => [name, this.record.cells[at] ?? '']))
  }

  missing(column: Column): never {
    throw this.error(column, 'is empty; write a number')
  }

  error(column: Column, mend: string): FormatError {
    return new FormatError(this.fileName, `row ${this.record.row}, ${column}`, mend)
  }
}

const DECIMAL = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i // every digit matches in one way only, so it cannot be made slow

function refuseDuplicates(rows: readonly SweepRow[], records: readonly CsvRecord[], fileName: string): void {
  const seen = new Map<string, number>()
  for (const [i, row] of rows.entries()) {
    const key = JSON.stringify([row.point, row.take, row.sweep, row.air])
    const first = seen.get(key)
    if (first !== undefined) {
      const what = `is point ${row.point}, take ${row.take}, air ${row.air} again, as row ${first}`
      throw new FormatError(
        fileName,
        `row ${records[i]!.row}`,
        `${what}; give each take its own number in a take column`,
      )
    }
    seen.set(key, records[i]!.row)
  }
}

/** Allowed, and more often a slip than meant: one clip for two rows, one point of a sweep in two places. */
function noteOddities(rows: readonly SweepRow[], problems: Problem[]): void {
  const places = new Map<string, number>()
  const files = new Set<string>()
  const told = new Set<string>()
  for (const { point, sweep, alongM, file } of rows) {
    const key = JSON.stringify([point, sweep])
    const first = places.get(key) ?? alongM
    places.set(key, first)
    if (first !== alongM && !told.has(key)) {
      problems.push({
        key: 'sheet_point_in_two_places',
        severity: 'note',
        values: { point, along_m: first, other_along_m: alongM },
      })
      told.add(key)
    }
    if (files.has(file) && !told.has(file)) {
      problems.push({ key: 'sheet_file_twice', severity: 'note', values: { file: printable(file) } })
      told.add(file)
    }
    files.add(file)
  }
}
