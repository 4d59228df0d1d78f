/**
 * Cells as one line of a CSV file: commas between, quotes only where they are needed, CRLF at the end.
 *
 * @see IETF RFC 4180, section 2. [RFC4180] in sources.ts
 */
export function csvLine(cells: readonly string[]): string {
  return `${cells.map((cell) => (/[",;\t\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(',')}\r\n`
}
