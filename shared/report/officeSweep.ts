import type { JobLine } from '../job/job'
import { wordsOf } from '../words/sentence'
import { keyed, type ReportCell, type ReportSection, type ReportTable } from './report'
import type { ReportResult } from './reportResult'

/** Reasons, every point and every clip of the sweeps. */
export function officeSweep(line: JobLine, result: ReportResult): ReportSection {
  return {
    id: 'sweep',
    heading: 'heading_office_sweep',
    items: result.answer.reasons.map((reason) => ({ text: reason })),
    tables: [pointTable(result), clipTable(line, result)],
  }
}

function pointTable({ answer }: ReportResult): ReportTable {
  return {
    caption: keyed('label_office_points'),
    columns: [
      'label_column_point',
      'label_column_along',
      'label_column_rank',
      'label_column_nearest',
      'label_column_level',
      'label_column_over_floor',
      'label_column_band',
      'label_column_rings',
      'label_column_pitch',
      'label_column_bubbling',
      'label_column_clips',
    ].map((key) => keyed(key)),
    rows: [...answer.points]
      .sort((a, b) => a.alongM - b.alongM || a.point - b.point)
      .map(({ point, alongM, rank, nearestProbability, evidence }): ReportCell[] => [
        { name: 'point', value: point },
        { name: 'along_m', value: alongM },
        { name: 'rank', value: rank },
        { name: 'probability', value: nearestProbability },
        { name: 'level_dbfs', value: evidence.levelDbFs },
        { name: 'over_floor_db', value: evidence.overFloorDb },
        { name: 'band_hz', value: evidence.bestBandHz },
        { name: 'ring_rate_per_s', value: evidence.ringRatePerS },
        { name: 'pitch_hz', value: evidence.medianPitchHz },
        { name: 'bubbling', value: evidence.bubbling },
        { name: 'clips', value: evidence.clipsUsed },
      ]),
  }
}

/** Of a digest as many digits as tell clips apart. */
const DIGEST_DIGITS = 12

function clipTable({ sweeps }: JobLine, { answer, clips: digests }: ReportResult): ReportTable {
  const rows = sweeps.flatMap(({ clips }) => clips.map(({ row }) => row))
  return {
    caption: keyed('label_office_clips'),
    columns: [
      'label_column_file',
      'label_column_point',
      'label_column_air',
      'label_column_used',
      'label_column_digest',
      'label_column_noticed',
    ].map((key) => keyed(key)),
    rows: answer.clips.map(({ file, used, problems }, i): ReportCell[] => {
      // Answer, digests and rows are of the same clips in the same order, unless clips were changed after the closing.
      const row = rows[i]?.file === file ? rows[i] : rows.find((each) => each.file === file)
      const digest = digests[i]?.file === file ? digests[i] : digests.find((each) => each.file === file)
      return [
        file,
        { name: 'point', value: row?.point ?? null },
        row === undefined ? '' : keyed(row.air === 'on' ? 'label_air_was_on' : 'label_air_was_off'),
        keyed(used ? 'label_used' : 'label_set_aside'),
        digest?.sha256?.slice(0, DIGEST_DIGITS) ?? '',
        problems.map((problem) => wordsOf(problem).text).join(' '),
      ]
    }),
  }
}
