import { NO_DIGGING } from '../job/digging'
import { diggingOf } from '../sketch/diggingOf'
import { wordsOf } from '../words/sentence'
import { METRIC } from '../words/shownUnits'
import { keyed, type ReportItem, type ReportSection, type ReportTable, reportItem } from './report'
import type { ReportOf } from './reportOf'

/** What was heard and where, and how the hole is taped where marks were told. */
export function heardSection(of: ReportOf): ReportSection {
  const tables = tapeTables(of)
  return {
    id: 'heard',
    heading: 'heading_report_heard',
    items: heardItems(of),
    ...(tables.length > 0 && { tables }),
  }
}

const EAR = { yes: 'report_by_ear', no: 'report_ear_denies', 'not sure': 'report_ear_unsure' } as const

function heardItems({ line, result, said, units = METRIC }: ReportOf): ReportItem[] {
  if (line.sweeps.every(({ clips }) => clips.length === 0)) return [reportItem('report_not_listened')]
  if (result === null) return [reportItem('report_working')]
  const { answer, how } = result
  const late = how === 'after' ? [reportItem('report_after_closing')] : []
  const [best] = answer.sources
  if (answer.verdict === 'no leak heard') return [reportItem('report_none_heard'), ...late]
  if (best === undefined) return [reportItem('report_unsure_nowhere'), reportItem('report_not_by_ear'), ...late]
  const values = {
    tape: wordsOf(best.tape, units).text,
    along_m: best.alongM,
    window_probability: best.windowProbability,
    from_m: best.windowM[0],
    to_m: best.windowM[1],
  }
  const ear = said === null ? 'report_not_by_ear' : EAR[said]
  const key = answer.verdict === 'located' ? 'report_located' : 'report_unsure'
  return [reportItem(key, values), reportItem(ear), reportItem('report_where_it_leaves'), ...late]
}

const WHAT = { begin: 'label_dig_from', place: 'label_dig_place', end: 'label_dig_to' } as const

/** Beyond this two tapes do not say where something is, m. */
const NOT_KNOWN_M = 10

function tapeTables({ line, result }: ReportOf): ReportTable[] {
  if (result === null || line.digging === undefined) return []
  const { marks, dimensions } = diggingOf(result.line, result.answer.sources[0], line.digging ?? NO_DIGGING)
  const [first, second] = marks
  if (first === undefined || second === undefined || dimensions.length === 0) return []
  return [
    {
      caption: keyed('label_dimensions'),
      columns: [
        keyed('label_column_piece'),
        keyed('label_column_tape', { name: first.name }),
        keyed('label_column_tape', { name: second.name }),
        keyed('label_column_error'),
      ],
      rows: dimensions.map(({ what, firstM, secondM, errorM }) => [
        keyed(WHAT[what]),
        { name: 'tape_m', value: firstM },
        { name: 'tape_m', value: secondM },
        errorM > NOT_KNOWN_M ? keyed('label_error_none') : { name: 'error_m', value: errorM },
      ]),
    },
  ]
}
