import type { MicrophoneSettings, Recording } from '../job/recording'
import { ASSUMED_DEPTH_M, type Line } from '../line/line'
import { CHOICE_WORDS } from './choiceWords'
import { keyed, type ReportCell, type ReportItem, type ReportSection, type ReportTable, reportItem } from './report'
import type { ReportOf } from './reportOf'

/** The line as it was told, and how the clips were recorded: the settings of every result. */
export function officeLine({ line, result }: ReportOf): ReportSection {
  const told = result?.line ?? line.line
  return {
    id: 'line',
    heading: 'heading_office_line',
    items: [
      ...lineItems(told),
      ...recordingItems(line.sweeps.flatMap(({ clips }) => clips.flatMap((clip) => clip.recording ?? []))),
    ],
    ...(told.stretches.length > 0 && { tables: [stretchTable(told)] }),
  }
}

function lineItems({ lengthM, depthM, airInletM, routeSdM, vertices, fittings, noises, pipe }: Line): ReportItem[] {
  const corners = Math.max(0, (vertices?.length ?? 0) - 2)
  return [
    lengthM === null ? reportItem('report_length_untold') : reportItem('report_length', { length_m: lengthM, corners }),
    depthM === null
      ? reportItem('report_depth_assumed', { depth_m: ASSUMED_DEPTH_M })
      : reportItem('report_depth', { depth_m: depthM }),
    ...(airInletM === null ? [] : [reportItem('report_inlet', { inlet_m: airInletM })]),
    ...(routeSdM === null ? [] : [reportItem('report_route', { route_m: routeSdM })]),
    ...(pipe === null
      ? []
      : [
          pipe.nominalIn === null
            ? reportItem('report_pipe', { material: pipe.material })
            : reportItem('report_pipe_size', { material: pipe.material, size: pipe.nominalIn }),
        ]),
    ...(fittings.length === 0 && noises.length === 0
      ? []
      : [reportItem('report_on_line', { fittings: fittings.length, noises: noises.length })]),
  ]
}

function stretchTable({ stretches }: Line): ReportTable {
  return {
    caption: keyed('label_office_stretches'),
    columns: [
      keyed('label_column_piece'),
      keyed('label_column_cover'),
      keyed('label_column_depth'),
      keyed('label_column_cost_m'),
      keyed('label_column_min_m'),
    ],
    rows: stretches.map(({ fromM, toM, cover, depthM, digCostPerM, digMinPerM }): ReportCell[] => [
      keyed('label_piece_range', { from_m: fromM, to_m: toM }),
      keyed(CHOICE_WORDS.cover[cover]),
      { name: 'depth_m', value: depthM },
      { name: 'cost', value: digCostPerM },
      { name: 'open_min', value: digMinPerM ?? null },
    ]),
  }
}

/** Each way of recording once. */
function recordingItems(recordings: readonly Recording[]): ReportItem[] {
  const ways = new Map<string, ReportItem>()
  for (const { device, sampleRateHz, keptBits, settings } of recordings) {
    const key = RECORDED[processing(settings)]
    const item = reportItem(key, { device: device === '' ? '-' : device, rate_hz: sampleRateHz, bits: keptBits })
    ways.set(JSON.stringify(item), item)
  }
  return [...ways.values()]
}

const RECORDED = {
  on: 'report_recorded_processed',
  off: 'report_recorded',
  unsaid: 'report_recorded_unsaid',
} as const

function processing({
  echoCancellation,
  noiseSuppression,
  autoGainControl,
}: MicrophoneSettings): keyof typeof RECORDED {
  const all = [echoCancellation, noiseSuppression, autoGainControl]
  if (all.some((each) => each === true)) return 'on'
  return all.every((each) => each === false) ? 'off' : 'unsaid'
}
