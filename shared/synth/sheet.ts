import type { SweepRow } from '../sweep/sweep'

/** The sheet of a sweep (`sweep.csv`); a `take` column only where on and off share a setting-down. */
export function sweepSheet(rows: readonly SweepRow[]): string {
  const shared = rows.some((row) => row.sharedTake)
  const timed = rows.some((row) => row.timeS !== null)
  const beside = rows.some((row) => row.offsetM !== 0)
  const columns: [string, (row: SweepRow) => string | number][] = [
    ['point', (row) => row.point],
    ['along_m', (row) => row.alongM],
    ['file', (row) => row.file],
    ['air', (row) => row.air],
  ]
  if (shared) columns.push(['take', (row) => row.take])
  if (beside) columns.push(['offset_m', (row) => row.offsetM])
  if (timed) columns.push(['time', (row) => (row.timeS === null ? '' : isoTime(row.timeS))])
  if (rows.some((row) => row.contact !== null)) columns.push(['contact', (row) => row.contact ?? ''])
  if (rows.some((row) => row.note !== '')) columns.push(['note', (row) => quoted(row.note)])
  return csv([columns.map(([name]) => name), ...rows.map((row) => columns.map(([, value]) => value(row)))])
}

/** Lines of a CSV file (RFC 4180, but with bare line feeds); cells must be quoted already where they need it. */
export function csv(lines: readonly (readonly (string | number)[])[]): string {
  return lines.map((cells) => `${cells.join(',')}\n`).join('')
}

function quoted(text: string): string {
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** ISO 8601 in UTC from seconds since 1970. */
export function isoTime(timeS: number): string {
  return new Date(timeS * 1000).toISOString().replace('.000Z', 'Z')
}
