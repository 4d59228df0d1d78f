import { printable } from '../../shared/base/shown'
import type { ClipEvidence } from '../../shared/evidence/evidence'
import { CLIP_FEATURES, type Feature } from '../../shared/evidence/features'
import { formatNumber, formatQuantity } from '../../shared/words/formatQuantity'
import { sentence, wordsOf } from '../../shared/words/sentence'
import type { InspectedClip } from './listen'
import { table, wrapped } from './print'

/**
 * What clips say, for people: one clip with the meaning of each number, several as a table with as many columns as the
 * page holds.
 *
 * @param width Columns of the page.
 */
export function inspectText(clips: readonly InspectedClip[], width: number): string {
  const [first] = clips
  const body =
    clips.length === 1 && first!.evidence ? oneClip(first!.file, first!.evidence, width) : clipTable(clips, width)
  const problems = clips.flatMap(({ file, evidence, problems: own }) =>
    [...own, ...(evidence?.problems ?? [])].map((problem) => {
      const { text, mend } = wordsOf(problem)
      return wrapped(`${printable(file)}: ${mend === null ? text : `${text} ${mend}`}`, width, 0)
    }),
  )
  return problems.length === 0 ? body : `${body}\n${problems.join('')}`
}

function oneClip(file: string, evidence: ClipEvidence, width: number): string {
  const { durationS, sampleRateHz, channels } = evidence
  const values = { file: printable(file), duration_s: durationS, rate_hz: sampleRateHz, channels }
  const numbers = CLIP_FEATURES.map((feature) => [feature.heading, shown(feature, evidence), feature.unit])
  const levels = evidence.bands.map((band) => [
    formatQuantity('band_hz', band.midHz).replace(' Hz', ''),
    ...[band.levelDbFs, band.quietDbFs, band.busyDbFs].map((level) => (level === null ? '-' : formatNumber(level, 1))),
  ])
  return [
    `${sentence('inspect_clip', values)}\n`,
    withMeanings(table(numbers, [true, false, true]), width),
    table([['band Hz', 'level dBFS', 'quiet', 'busy'], ...levels], [false, false, false, false]),
  ].join('\n')
}

/** The meaning of each number beside it, in a column of its own. */
function withMeanings(numbers: string, width: number): string {
  const rows = numbers.trimEnd().split('\n')
  const left = Math.max(...rows.map((row) => row.length)) + 2
  return rows
    .map((row, i) => {
      const [first = '', ...others] = wrapped(CLIP_FEATURES[i]!.meaning, width - left, 0)
        .trimEnd()
        .split('\n')
      return [row.padEnd(left) + first, ...others.map((line) => ' '.repeat(left) + line.trimStart())].join('\n')
    })
    .join('\n')
    .concat('\n')
}

function clipTable(clips: readonly InspectedClip[], width: number): string {
  const fixed = [
    ['clip', 's', 'kHz'],
    ...clips.map(({ file, evidence }) => [
      printable(file, 40),
      evidence === null ? '-' : formatNumber(evidence.durationS, 1),
      evidence === null ? '-' : formatNumber(evidence.sampleRateHz / 1000, 1),
    ]),
  ]
  const columns = CLIP_FEATURES.map((feature) => [
    feature.unit === '' ? feature.heading : `${feature.heading} ${feature.unit}`,
    ...clips.map(({ evidence }) => (evidence === null ? '-' : shown(feature, evidence))),
  ])
  const kept = columns.slice(0, columnsThatFit(fixed, columns, width))
  const rows = fixed.map((row, i) => [...row, ...kept.map((column) => column[i]!)])
  const rest = kept.length === columns.length ? '' : `\n${sentence('inspect_more_columns', {})}\n`
  return table(rows, [true, ...rows[0]!.slice(1).map(() => false)]) + rest
}

/** How many of the columns stand beside the fixed ones on the page; at least one. */
function columnsThatFit(
  fixed: readonly (readonly string[])[],
  columns: readonly (readonly string[])[],
  width: number,
): number {
  const widest = (cells: readonly string[]) => cells.reduce((most, cell) => Math.max(most, cell.length), 0) + 2
  let used = fixed[0]!.reduce((sum, _, i) => sum + widest(fixed.map((row) => row[i]!)), 0)
  for (const [i, column] of columns.entries()) {
    used += widest(column)
    if (used > width + 2) return Math.max(1, i)
  }
  return columns.length
}

/** Four figures are more than a table needs, and as many as any of the features has. */
function shown(feature: Feature, evidence: ClipEvidence): string {
  const value = feature.of(evidence)
  if (value === null) return '-'
  const size = Math.abs(value)
  if (feature.unit === 'dBFS' || feature.unit === 'dB') return formatNumber(value, 1)
  return formatNumber(value, size >= 100 ? 0 : size >= 1 ? 1 : size >= 0.1 || size === 0 ? 2 : 4)
}
