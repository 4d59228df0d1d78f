import { csvLine } from './csvLine'
import { secondsToIso } from './isoTime'
import type { SweepRow } from './sweep'

interface WrittenColumn {
  readonly name: string
  readonly of: (row: SweepRow) => string
  /** Left out of the file when every row has the value it would be read as anyway. */
  readonly optional?: (row: SweepRow) => boolean
}

const COLUMNS: readonly WrittenColumn[] = [
  { name: 'point', of: (row) => String(row.point) },
  { name: 'along_m', of: (row) => String(row.alongM) },
  { name: 'file', of: (row) => row.file },
  { name: 'air', of: (row) => row.air },
  { name: 'take', of: (row) => String(row.take), optional: (row) => !row.sharedTake },
  { name: 'sweep', of: (row) => row.sweep, optional: (row) => row.sweep === '1' },
  { name: 'offset_m', of: (row) => String(row.offsetM), optional: (row) => row.offsetM === 0 },
  {
    name: 'time',
    of: (row) => (row.timeS === null ? '' : secondsToIso(row.timeS)),
    optional: (row) => row.timeS === null,
  },
  { name: 'contact', of: (row) => row.contact ?? '', optional: (row) => row.contact === null },
  {
    name: 'air_kpa',
    of: (row) => (row.airKpa === null ? '' : String(row.airKpa)),
    optional: (row) => row.airKpa === null,
  },
  { name: 'processing', of: ({ phone }) => (phone?.processing ?? []).join(' '), optional: hasNoProcessing },
  { name: 'device_hz', of: ({ phone }) => String(phone?.deviceHz ?? ''), optional: ({ phone }) => !phone?.deviceHz },
  { name: 'ended_by', of: ({ phone }) => phone?.endedBy ?? '', optional: ({ phone }) => !phone?.endedBy },
  { name: 'note', of: (row) => row.note, optional: (row) => row.note === '' },
]

function hasNoProcessing({ phone }: SweepRow): boolean {
  return (phone?.processing ?? []).length === 0
}

/**
 * Rows as the text of a `sweep.csv`: commas, CRLF, metres in full precision, UTC times; columns that say nothing are
 * left out, unknown ones are kept. `readSweepCsv` gives the same rows again.
 *
 * Rows that share no take must be told apart by point, sweep and air, as the format without a take column asks.
 */
export function writeSweepCsv(rows: readonly SweepRow[]): string {
  const columns = COLUMNS.filter(({ optional }) => !optional || !rows.every(optional))
  const unknown = [...new Set(rows.flatMap((row) => Object.keys(row.unknown)))]
  const header = csvLine([...columns.map(({ name }) => name), ...unknown])
  const lines = rows.map((row) =>
    csvLine([...columns.map(({ of }) => of(row)), ...unknown.map((name) => row.unknown[name] ?? '')]),
  )
  return header + lines.join('')
}
