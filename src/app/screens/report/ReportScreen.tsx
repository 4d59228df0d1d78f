import { useMemo, useState } from 'react'
import { confirmationOf } from '../../../../shared/job/confirmationOf'
import type { JobLine } from '../../../../shared/job/job'
import { customerReport } from '../../../../shared/report/customerReport'
import { officeReport } from '../../../../shared/report/officeReport'
import { reportName } from '../../../../shared/report/reportName'
import { type ReportResult, reportResult } from '../../../../shared/report/reportResult'
import { ExportJobButton } from '../../export/ExportJobButton'
import { PageNotices } from '../../frame/PageNotices'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Switch } from '../../look/widgets/Switch'
import { answerOf } from '../../store/selectors/answerOf'
import { shownLine } from '../../store/selectors/shownLine'
import { soundingsOf } from '../../store/selectors/soundingsOf'
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
  const name = useAppState((state) => (state.job === null ? '' : reportName(state.job, line)))
  const result = useResult(line)
  const [withOffice, setWithOffice] = useState(false)
  const said = result === null ? null : (confirmationOf(line, result.answer)?.says ?? null)
  const of = { line, result, said, units }
  return (
    <>
      <PageNotices place="report" />
      <div className="report-tools">
        <Button kind="main" wide onClick={() => window.print()}>
          {say('do_print')}
        </Button>
        <Switch words={say('label_report_with_office')} on={withOffice} onChange={setWithOffice} />
        <p className="soft">{say('report_print_how')}</p>
        <ExportJobButton />
      </div>
      <article className="report">
        <h2 className="report-title">{say('heading_report', { name })}</h2>
        <ReportTimes line={line} />
        {customerReport(of).map((section) => (
          <SectionPart key={section.id} section={section} line={line}>
            {section.id === 'heard' && <ReportSketch line={line} result={result} isConfirmed={said === 'yes'} />}
          </SectionPart>
        ))}
      </article>
      <article className="report report-office" data-printed={withOffice}>
        <h2 className="report-title">{say('heading_report_office', { name })}</h2>
        {officeReport(of, VERSION).map((section) => (
          <SectionPart key={section.id} section={section} line={line} />
        ))}
      </article>
    </>
  )
}

/** What was heard: as it was kept when the job was closed, otherwise as it is now. */
function useResult(line: JobLine): ReportResult | null {
  const latest = useAppState((state) => state.session.answers[line.id] ?? null)
  const isCurrent = useAppState((state) => answerOf(state, line)?.isCurrent === true)
  const heard = useAppState((state) => state.session.heard)
  const timeS = useAppState((state) => state.job?.changedS ?? 0)
  return useMemo(() => {
    const answer = isCurrent && latest !== null ? latest.answer : null
    const live = answer && { answer, soundings: soundingsOf(line, heard), timeS, version: VERSION }
    return reportResult(line, live)
  }, [line, latest, isCurrent, heard, timeS])
}
