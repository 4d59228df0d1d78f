import type { JobLine } from '../../shared/job/job'
import { pictureKind } from '../../shared/jobfile/pictureKind'
import { cellText, isNumberColumn } from '../../shared/report/cellText'
import { groupedItems } from '../../shared/report/groupedItems'
import type { Picture } from '../../shared/report/picture'
import { proofCurve } from '../../shared/report/proofCurve'
import type { ReportItem, ReportSection, ReportTable } from '../../shared/report/report'
import { levelRange, spectrumPicture } from '../../shared/report/spectrumPicture'
import { sentence, wordsOf } from '../../shared/words/sentence'
import type { ShownUnits } from '../../shared/words/shownUnits'
import { unbroken } from '../../shared/words/unbroken'
import { REPORT_CSS } from './reportCss'
import { itemWords } from './reportText'

/** A line's part of the report. */
export interface ReportedLine {
  readonly line: JobLine
  readonly title: string
  readonly officeTitle: string
  readonly customer: readonly ReportSection[]
  readonly office: readonly ReportSection[]
  /** The line from above; `null` where there is nothing to draw. */
  readonly sketch: Picture | null
}

export interface HtmlParts {
  readonly units: ShownUnits
  readonly load: (sha256: string) => Uint8Array | null
}

/** The report as one page that needs nothing else: styles, drawings and photos are in it, and no script is. */
export function reportHtml(title: string, lines: readonly ReportedLine[], parts: HtmlParts): string {
  const articles = lines.flatMap(({ line, title: own, officeTitle, customer, office, sketch }) => [
    article(own, customer, { line, parts, sketch }),
    article(officeTitle, office, { line, parts, sketch: null }),
  ])
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">',
    `<title>${escaped(title)}</title><style>${REPORT_CSS}</style></head><body>`,
    ...articles,
    '</body></html>\n',
  ].join('\n')
}

interface ArticleOf {
  readonly line: JobLine
  readonly parts: HtmlParts
  readonly sketch: Picture | null
}

function article(title: string, sections: readonly ReportSection[], of: ArticleOf): string {
  return `<article><h1>${escaped(title)}</h1>${sections.map((section) => sectionHtml(section, of)).join('\n')}</article>`
}

function sectionHtml(section: ReportSection, { line, parts, sketch }: ArticleOf): string {
  const { items, tables = [], spectra = [] } = section
  const range = levelRange(spectra)
  const isCurves = section.id === 'tested' && items.some(({ curveOf }) => curveOf)
  return [
    `<section class="${section.id}"><h2>${escaped(sentenceOf(section.heading))}</h2><ul>`,
    ...groupedItems(items).map((group) => {
      const own = group.map((item) => `<p>${itemHtml(item, line, parts)}</p>`)
      return `<li${group[0]!.group === undefined ? '' : ' class="group"'}>${own.join('')}</li>`
    }),
    '</ul>',
    isCurves ? `<p class="note">${escaped(sentence('report_curve_how', {}))}</p>` : '',
    section.id === 'heard' && sketch !== null ? svg(sketch, 'sketch') : '',
    ...tables.map((each) => tableHtml(each, parts.units)),
    ...(spectra.length === 0
      ? []
      : [
          `<div class="spectra">${spectra.map((each) => svg(spectrumPicture(each, range), 'spectrum')).join('')}</div>`,
        ]),
    section.id === 'ask' ? '<p class="rule"></p>' : '',
    '</section>',
  ].join('')
}

const sentenceOf = (key: string) => wordsOf({ key, values: {} }).text

function itemHtml(item: ReportItem, line: JobLine, { units, load }: HtmlParts): string {
  const test = line.pressureTests?.find(({ id }) => id === item.curveOf)
  const curve = test === undefined ? null : proofCurve(test)
  return [
    escaped(unbroken(itemWords(item, line, units))),
    curve === null ? '' : svg(curve, 'curve'),
    item.photo === undefined ? '' : photoHtml(load(item.photo)),
  ].join('')
}

function photoHtml(bytes: Uint8Array | null): string {
  const kind = bytes === null ? null : pictureKind(bytes)
  if (bytes === null || kind === null) return ` <span class="note">${escaped(sentence('photo_missing', {}))}</span>`
  const type = kind === 'jpg' ? 'jpeg' : kind
  const data = Buffer.from(bytes).toString('base64')
  return `<img alt="${escaped(sentence('label_found_photo', {}))}" src="data:image/${type};base64,${data}">`
}

function tableHtml({ caption, columns, rows }: ReportTable, units: ShownUnits): string {
  const align = (i: number) => (isNumberColumn(rows, i) ? ' class="number"' : '')
  const head = columns.map((column, i) => `<th scope="col"${align(i)}>${escaped(wordsOf(column, units).text)}</th>`)
  const body = rows.map(
    (row) => `<tr>${row.map((cell, i) => `<td${align(i)}>${escaped(cellText(cell, units))}</td>`).join('')}</tr>`,
  )
  const captionHtml = `<caption>${escaped(wordsOf(caption, units).text)}</caption>`
  return `<table>${captionHtml}<thead><tr>${head.join('')}</tr></thead><tbody>${body.join('')}</tbody></table>`
}

function svg({ widthPx, heightPx, label, shapes }: Picture, kind: string): string {
  const drawn = shapes.map((shape) =>
    shape.kind === 'path'
      ? `<path class="look-${shape.look}" d="${escaped(shape.d)}"/>`
      : `<text x="${shape.x}" y="${shape.y}" text-anchor="${shape.anchor}"${shape.light ? ' class="light"' : ''}>${escaped(shape.text)}</text>`,
  )
  const size = `viewBox="0 0 ${widthPx} ${heightPx}"`
  return `<svg class="${kind}" ${size} role="img" aria-label="${escaped(label)}">${drawn.join('')}</svg>`
}

/** What came from a file is text, never markup. */
function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`)
}
