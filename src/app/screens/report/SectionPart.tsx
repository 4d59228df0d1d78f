import { type ReactNode, useId } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import { cellText, isNumberColumn } from '../../../../shared/report/cellText'
import { groupedItems } from '../../../../shared/report/groupedItems'
import { proofCurve } from '../../../../shared/report/proofCurve'
import type { ReportItem, ReportSection, ReportTable } from '../../../../shared/report/report'
import { levelRange, spectrumPicture } from '../../../../shared/report/spectrumPicture'
import { FoundPhoto } from '../../found/FoundPhoto'
import { useSay } from '../../frame/useSay'
import { Table } from '../../look/widgets/Table'
import { ReportPicture } from './ReportPicture'

interface SectionPartProps {
  readonly section: ReportSection
  readonly line: JobLine
  readonly children?: ReactNode
}

/** A part of the report: its sentences, each with the curve or the photo that belongs to it, tables and spectra. */
export function SectionPart({ section, line, children }: SectionPartProps) {
  const id = useId()
  const { say, sayKeyed } = useSay()
  const { spectra = [], tables = [], items } = section
  const range = levelRange(spectra)
  return (
    <section className="report-section" data-section={section.id} aria-labelledby={id}>
      <h3 id={id}>{sayKeyed({ key: section.heading, values: {} })}</h3>
      <ul className="report-items">
        {groupedItems(items).map((group, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: sentences have no other name, and never change places
          <li key={i} data-group={group[0]!.group !== undefined}>
            {group.map((item, j) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: as above
              <Item key={j} item={item} line={line} />
            ))}
          </li>
        ))}
      </ul>
      {section.id === 'tested' && items.some(({ curveOf }) => curveOf) && (
        <p className="soft report-note">{say('report_curve_how')}</p>
      )}
      {children}
      {tables.map((table) => (
        <TablePart key={table.caption.key} table={table} />
      ))}
      {spectra.length > 0 && (
        <div className="report-spectra">
          {spectra.map((spectrum) => (
            <ReportPicture key={spectrum.point} kind="spectrum" picture={spectrumPicture(spectrum, range)} />
          ))}
        </div>
      )}
      {section.id === 'ask' && <p className="report-rule" aria-hidden="true" />}
    </section>
  )
}

function Item({ item, line }: { readonly item: ReportItem; readonly line: JobLine }) {
  const told = item.inUnitOf ?? item.curveOf
  const test = line.pressureTests?.find(({ id }) => id === told)
  const { sayKeyed } = useSay(test?.unit)
  const curve = test && item.curveOf ? proofCurve(test) : null
  return (
    <div>
      <p>{sayKeyed(item.text)}</p>
      {curve && <ReportPicture kind="curve" picture={curve} />}
      {item.photo && <FoundPhoto photo={{ sha256: item.photo, bytes: 0 }} />}
    </div>
  )
}

function TablePart({ table: { caption, columns, rows } }: { readonly table: ReportTable }) {
  const { sayKeyed, units } = useSay()
  return (
    <div className="report-table">
      <Table
        caption={sayKeyed(caption)}
        columns={columns.map((heading, i) => ({
          heading: sayKeyed(heading),
          align: isNumberColumn(rows, i) ? 'number' : 'text',
        }))}
        rows={rows.map((cells, i) => ({ key: String(i), cells: cells.map((cell) => cellText(cell, units)) }))}
      />
    </div>
  )
}
