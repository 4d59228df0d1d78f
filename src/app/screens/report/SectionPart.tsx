import { type ReactNode, useId } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import type { ReportItem, ReportSection } from '../../../../shared/report/report'
import { FoundPhoto } from '../../found/FoundPhoto'
import { useSay } from '../../frame/useSay'
import { ProofCurve } from './ProofCurve'

interface SectionPartProps {
  readonly section: ReportSection
  readonly line: JobLine
  readonly children?: ReactNode
}

/** A part of the report: its sentences, each with the curve or the photo that belongs to it. */
export function SectionPart({ section, line, children }: SectionPartProps) {
  const id = useId()
  const { sayKeyed } = useSay()
  return (
    <section className="report-section" data-section={section.id} aria-labelledby={id}>
      <h3 id={id}>{sayKeyed({ key: section.heading, values: {} })}</h3>
      <ul className="report-items">
        {section.items.map((item, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: sentences have no other name, and never change places
          <Item key={i} item={item} line={line} />
        ))}
      </ul>
      {children}
      {section.id === 'ask' && <p className="report-rule" aria-hidden="true" />}
    </section>
  )
}

function Item({ item, line }: { readonly item: ReportItem; readonly line: JobLine }) {
  const test = line.pressureTests?.find(({ id }) => id === item.curveOf)
  const { sayKeyed } = useSay(test?.unit)
  return (
    <li>
      {sayKeyed(item.text)}
      {test && <ProofCurve test={test} />}
      {item.photo && <FoundPhoto photo={{ sha256: item.photo, bytes: 0 }} />}
    </li>
  )
}
