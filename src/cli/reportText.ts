import { printable } from '../../shared/base/shown'
import type { JobLine } from '../../shared/job/job'
import { cellText, isNumberColumn } from '../../shared/report/cellText'
import type { ReportItem, ReportSection, ReportTable } from '../../shared/report/report'
import { wordsOf } from '../../shared/words/sentence'
import type { ShownUnits } from '../../shared/words/shownUnits'
import { table, wrapped } from './print'

/** How a report is written out. */
export interface ReportStyle {
  readonly width: number
  readonly units: ShownUnits
}

/** Sections as a page of text: headings, sentences, tables. Curves and photos are in the page that `--html` writes. */
export function reportText(
  title: string,
  sections: readonly ReportSection[],
  line: JobLine,
  style: ReportStyle,
): string {
  const parts = sections.map((section) => {
    const heading = `${wordsOf({ key: section.heading, values: {} }).text}\n`
    const items = section.items.map((item) =>
      wrapped(printable(itemWords(item, line, style.units), MOST), style.width, 2),
    )
    return [heading, ...items, ...(section.tables ?? []).map((each) => tableText(each, style.units))].join('')
  })
  return [`${printable(title)}\n`, ...parts].join('\n')
}

const MOST = 20_000

/** What an item says, pressures in the unit of the gauge they were read on. */
export function itemWords({ text, inUnitOf, curveOf }: ReportItem, line: JobLine, units: ShownUnits): string {
  const test = line.pressureTests?.find(({ id }) => id === (inUnitOf ?? curveOf))
  const said = wordsOf(text, test === undefined ? units : { ...units, pressure: test.unit })
  return said.mend === null ? said.text : `${said.text} ${said.mend}`
}

function tableText({ caption, columns, rows }: ReportTable, units: ShownUnits): string {
  const cells = rows.map((row) => row.map((cell) => printable(cellText(cell, units), 60)))
  const heading = columns.map((column) => wordsOf(column, units).text)
  const body = table(
    [heading, ...cells],
    columns.map((_, i) => !isNumberColumn(rows, i)),
  )
  return `\n  ${wordsOf(caption, units).text}\n${body.replace(/^(?=.)/gm, '  ')}`
}
