import { useState } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import { customerReport } from '../../../../shared/report/customerReport'
import { officeReport } from '../../../../shared/report/officeReport'
import { PageNotices } from '../../frame/PageNotices'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Switch } from '../../look/widgets/Switch'
import { answerOf, confirmationOf } from '../../store/selectors/answerOf'
import { shownLine } from '../../store/selectors/shownLine'
import { VERSION } from '../../version'
import { ReportSketch } from './ReportSketch'
import { ReportTimes } from './ReportTimes'
import { SectionPart } from './SectionPart'
import './ReportScreen.css'

/** What the customer gets, and a page for the office; printed, or saved as PDF, by the browser. */
export function ReportScreen() {
  const line = useAppState(shownLine)
  if (line === null) return null
  return <ReportOfLine key={line.id} line={line} />
}

function ReportOfLine({ line }: { readonly line: JobLine }) {
  const { say, units } = useSay()
  const jobName = useAppState((state) => state.job?.name ?? '')
  const latest = useAppState((state) => state.session.answers[line.id] ?? null)
  const isCurrent = useAppState((state) => answerOf(state, line)?.isCurrent === true)
  const [withOffice, setWithOffice] = useState(false)
  const answer = isCurrent && latest !== null ? latest.answer : null
  const said = answer === null ? null : (confirmationOf(line, answer)?.says ?? null)
  const of = { line, answer, said, units }
  return (
    <>
      <PageNotices place="report" />
      <div className="report-tools">
        <Button kind="main" wide onClick={() => window.print()}>
          {say('do_print')}
        </Button>
        <Switch words={say('label_report_with_office')} on={withOffice} onChange={setWithOffice} />
        <p className="soft">{say('report_print_how')}</p>
      </div>
      <article className="report">
        <h2 className="report-title">{say('heading_report', { job: jobName, line: line.name })}</h2>
        <ReportTimes line={line} />
        {customerReport(of).map((section) => (
          <SectionPart key={section.id} section={section} line={line}>
            {section.id === 'heard' && <ReportSketch line={line} answer={answer} isConfirmed={said === 'yes'} />}
          </SectionPart>
        ))}
      </article>
      <article className="report report-office" data-printed={withOffice}>
        <SectionPart section={officeReport(of, VERSION)} line={line} />
      </article>
    </>
  )
}
