import { confirmationOf } from '../../../shared/job/confirmationOf'
import type { Job, JobLine } from '../../../shared/job/job'
import type { Sounding } from '../../../shared/locate/answer'
import { customerReport } from '../../../shared/report/customerReport'
import { officeReport } from '../../../shared/report/officeReport'
import { reportName } from '../../../shared/report/reportName'
import { type ReportResult, reportResult } from '../../../shared/report/reportResult'
import { sketchPicture } from '../../../shared/report/sketchPicture'
import { sentence } from '../../../shared/words/sentence'
import type { ShownUnits } from '../../../shared/words/shownUnits'
import { Analysts } from '../analysts'
import type { Args } from '../args'
import { TemporaryBytes } from '../byteFiles'
import { CallError } from '../callError'
import { writeFileAt } from '../files'
import { clearProgress, pageWidth, print, showProgress } from '../print'
import { type ReportJob, readReportJob } from '../readReportJob'
import { type ReportedLine, reportHtml } from '../reportHtml'
import { reportText } from '../reportText'
import { VERSION } from '../version'

/** `yardhark report JOB`: what the customer and the office are told of a job. */
export async function reportCommand({ rest, options }: Args): Promise<void> {
  const [path, ...more] = rest
  if (path === undefined || path === '') throw new CallError('report needs a job; yardhark report --help')
  if (more.length > 0) throw new CallError('report takes one job; leave out the others')
  const units: ShownUnits = options.has('feet') ? { length: 'ft', pressure: 'psi' } : { length: 'm', pressure: 'kPa' }
  const bytes = new TemporaryBytes()
  try {
    const opened = await readReportJob(path, bytes)
    const lines: ReportedLine[] = []
    for (const line of opened.job.lines) lines.push(await reported(opened, line, units))
    const file = options.get('html')
    if (file !== undefined) writeHtml(file, options.has('force'), opened, lines, units)
    else await print(textOf(lines, options.has('office'), units))
  } finally {
    bytes.close()
  }
}

async function reported(opened: ReportJob, line: JobLine, units: ShownUnits): Promise<ReportedLine> {
  const result = await resultOf(opened, line)
  const said = result === null ? null : (confirmationOf(line, result.answer)?.says ?? null)
  const of = { line, result, said, units }
  const names = { name: reportName(opened.job, line) }
  return {
    line,
    title: sentence('heading_report', names),
    officeTitle: sentence('heading_report_office', names),
    customer: customerReport(of),
    office: officeReport(of, VERSION),
    sketch: sketchPicture(line, result, said === 'yes', units),
  }
}

const nameOf = ({ name, id }: Job) => (name === '' ? id : name)

/** The answer as it was kept, or worked out from the clips that lie with the job. */
async function resultOf({ load }: ReportJob, line: JobLine): Promise<ReportResult | null> {
  const kept = reportResult(line, null)
  const clips = line.sweeps.flatMap((sweep) => sweep.clips)
  const here = clips.filter(({ sound }) => sound !== null && load(sound.sha256) !== null)
  if (kept !== null || here.length === 0) return kept
  const analysts = new Analysts(here.length)
  try {
    const soundings: Sounding[] = []
    for (const [done, { row, sound, problems }] of clips.entries()) {
      showProgress(`listening: ${done + 1} of ${clips.length} clips`)
      const own = sound === null ? null : load(sound.sha256)
      const heard = own === null ? null : await analysts.hear(own, row.file)
      soundings.push({
        row,
        evidence: heard?.evidence ?? null,
        problems: [...problems, ...(heard?.problems ?? MISSING)],
      })
    }
    showProgress('locating')
    const answer = await analysts.locate({ line: line.line, soundings })
    return reportResult(line, { answer, soundings, timeS: 0, version: VERSION })
  } finally {
    clearProgress()
    await analysts.close()
  }
}

const MISSING = [{ key: 'missing_file', severity: 'spoilt' as const, values: {} }]

function textOf(lines: readonly ReportedLine[], withOffice: boolean, units: ShownUnits): string {
  const style = { width: pageWidth(), units }
  return lines
    .flatMap(({ line, title, officeTitle, customer, office }) => [
      reportText(title, customer, line, style),
      ...(withOffice ? [reportText(officeTitle, office, line, style)] : []),
    ])
    .join('\n')
}

function writeHtml(
  file: string,
  force: boolean,
  { job, load }: ReportJob,
  lines: readonly ReportedLine[],
  units: ShownUnits,
): void {
  const html = reportHtml(nameOf(job), lines, { units, load })
  writeFileAt(file, new TextEncoder().encode(html), force)
}
