import { formatQuantity } from '../words/formatQuantity'
import { wordsOf } from '../words/sentence'
import type { ShownUnits } from '../words/shownUnits'
import type { ReportCell } from './report'

/** What stands in a cell of a report's table. */
export function cellText(cell: ReportCell, units: ShownUnits): string {
  if (typeof cell === 'string') return cell
  if ('key' in cell) return wordsOf(cell, units).text
  return cell.value === null ? '' : formatQuantity(cell.name, cell.value, units)
}

/** Columns that hold nothing but numbers stand to the right. */
export function isNumberColumn(rows: readonly (readonly ReportCell[])[], i: number): boolean {
  return rows.length > 0 && rows.every((row) => typeof row[i] === 'object' && 'value' in row[i])
}
