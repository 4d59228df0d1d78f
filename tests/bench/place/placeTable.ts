import type { Judged } from './judgeSweep'
import { byFamily } from './placeBounds'
import { type PlaceFigures, placeFigures, pooled, type Share, type Spread } from './placeFigures'

type Column = readonly [heading: string, cell: (figures: PlaceFigures) => string]

const shown = (value: number | null, digits = 2) => (value === null ? '-' : value.toFixed(digits))
const spread = (value: Spread | null) => (value === null ? '-' : `${shown(value.median)} / ${shown(value.p90)}`)
const whole = ({ count, of }: Share) => (of === 0 ? '-' : `${Math.round((100 * count) / of)} %`)
const counts = ({ count, of }: Share) => (of === 0 ? '-' : `${count}/${of}`)

/** What the README shows. */
const COLUMNS: readonly Column[] = [
  ['sweeps', (f) => String(f.sweeps)],
  ['error', (f) => spread(f.error)],
  ['loudest point', (f) => spread(f.loudest)],
  ['parabola', (f) => spread(f.parabola)],
  ['bound', (f) => spread(f.bound)],
  ['window holds', (f) => whole(f.held)],
  ['located', (f) => whole(f.located)],
  ['unsure', (f) => whole(f.unsure)],
  ['no leak heard', (f) => whole(f.none)],
  ['window of located', (f) => shown(f.locatedWidth)],
]

/** What only the terminal shows. */
const MORE: readonly Column[] = [
  ['most over floor', (f) => spread(f.mostOverFloor)],
  ['window', (f) => shown(f.width)],
  ['score', (f) => shown(f.score)],
  ['CRPS', (f) => shown(f.crps, 3)],
  ['less loudest', (f) => (f.lessLoudest ? `${shown(f.lessLoudest.mean)} ± ${shown(f.lessLoudest.se)}` : '-')],
  ['over bound', (f) => shown(f.overBound)],
  ['plain located', (f) => counts(f.plainLocated)],
  ['missed', (f) => counts(f.missed)],
  ['> 1 off', (f) => counts(f.farOff)],
  ['second', (f) => counts(f.second)],
  ['both', (f) => counts(f.bothFound)],
  ['no window', (f) => String(f.withoutWindow)],
  ['from exit', (f) => spread(f.exitError)],
  ['draw s', (f) => shown(f.drawS)],
  ['locate s', (f) => shown(f.locateS)],
]

/** A row of a table. */
export interface TableRow {
  readonly name: string
  readonly figures: PlaceFigures
}

/** A row a family, in their order, and one for the pool. */
export function familyRows(judged: readonly Judged[]): TableRow[] {
  const families = byFamily(judged).map(({ family, figures }) => ({ name: family, figures }))
  const inPool = pooled(judged)
  return inPool.length === 0 ? families : [...families, { name: '**pooled**', figures: placeFigures(inPool) }]
}

/** Rows as a table in Markdown. `more`: the columns that only the terminal shows instead. */
export function placeTable(rows: readonly TableRow[], more = false): string {
  const columns = more ? MORE : COLUMNS
  const heading = ['family', ...columns.map(([name]) => name)]
  const cells = [heading, ...rows.map(({ name, figures }) => [name, ...columns.map(([, cell]) => cell(figures))])]
  const widths = heading.map((_, c) => Math.max(...cells.map((row) => row[c]!.length)))
  const line = (row: readonly string[]) =>
    `| ${row.map((cell, c) => (c === 0 ? cell.padEnd(widths[c]!) : cell.padStart(widths[c]!))).join(' | ')} |`
  const rule = `|${widths.map((width, c) => (c === 0 ? '-'.repeat(width + 2) : `${'-'.repeat(width + 1)}:`)).join('|')}|`
  return [line(heading), rule, ...cells.slice(1).map(line)].join('\n')
}
