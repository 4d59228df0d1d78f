import type { CalibrationBin } from '../../shared/learn/calibration'
import type { DetectorModel, Evaluation } from '../../shared/learn/model'
import type { RocArea } from '../../shared/learn/rocArea'
import { formatNumber } from '../../shared/words/formatQuantity'
import { sentence } from '../../shared/words/sentence'
import { table, wrapped } from './print'

/** What a detector learnt from and what it is worth, for people. */
export function modelText(model: DetectorModel, width: number): string {
  const { name, leaks, others, jobs } = model.card
  const learnt = sentence('detector_trained_on', { name, clips: leaks + others, leaks, others, jobs })
  return [
    wrapped(learnt, width, 0),
    ...model.evaluations.map((each) => evaluationText(each, sentence(HEADING[each.keptApart], {}), width)),
  ].join('\n')
}

const HEADING = { job: 'heading_detector_apart_job', device: 'heading_detector_apart_device' } as const

/** One evaluation under a heading. */
export function evaluationText(evaluation: Evaluation, heading: string, width: number): string {
  const { area, brier, atMiss, byCover, calibration } = evaluation
  const { threshold, hits, misses, falseAlarms, rightlyNot } = atMiss
  const values = {
    threshold_probability: threshold,
    hits,
    misses,
    false_alarms: falseAlarms,
    others: falseAlarms + rightlyNot,
  }
  return [
    `${heading}\n`,
    wrapped(areaText(area), width, 2),
    wrapped(sentence('detector_brier', { brier: formatNumber(brier, 3) }), width, 2),
    wrapped(sentence('detector_threshold', values), width, 2),
    '\n',
    indented(coverTable(byCover)),
    `\n  ${sentence('heading_detector_calibration', {})}\n`,
    indented(calibrationTable(calibration)),
  ].join('')
}

function areaText({ area, low, high }: RocArea): string {
  return sentence('detector_area', { area_share: area, low_share: low, high_share: high })
}

function coverTable(byCover: Evaluation['byCover']): string {
  const rows = byCover.map(({ cover, counts, area }) => [
    cover || '-',
    ...[counts.hits, counts.misses, counts.falseAlarms, counts.rightlyNot].map(String),
    area === null ? '-' : `${formatNumber(area.area, 3)} +- ${formatNumber(area.standardError, 3)}`,
  ])
  const header = ['cover', 'found', 'missed', 'false', 'rightly not', 'ROC area']
  return table([header, ...rows], [true, false, false, false, false, false])
}

function calibrationTable(bins: readonly CalibrationBin[]): string {
  const rows = bins
    .filter(({ clips }) => clips > 0)
    .map(({ said, happened, clips }) => [formatNumber(said!, 2), formatNumber(happened!, 2), String(clips)])
  return table([['said', 'leaks', 'clips'], ...rows], [false, false, false])
}

function indented(text: string): string {
  return text.replace(/^(?=.)/gm, '  ')
}
