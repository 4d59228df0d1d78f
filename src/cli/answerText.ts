import { isTry, nextSteps } from '../../shared/answer/nextSteps'
import type { Problem } from '../../shared/base/problem'
import { printable } from '../../shared/base/shown'
import type { Line } from '../../shared/line/line'
import { lineRange } from '../../shared/line/lineRange'
import type { LocateAnswer, Sounding, Source } from '../../shared/locate/answer'
import { formatNumber, formatQuantity, lengthUnit } from '../../shared/words/formatQuantity'
import { sentence, wordsOf } from '../../shared/words/sentence'
import type { ShownUnits } from '../../shared/words/shownUnits'
import { table, wrapped } from './print'
import { sketchLine } from './sketchLine'

export interface LocatedSweep {
  readonly answer: LocateAnswer
  readonly line: Line
  readonly soundings: readonly Sounding[]
  /** What is odd in sheet, names and line. */
  readonly problems: readonly Problem[]
}

export interface TextStyle {
  readonly width: number
  readonly shades: boolean
  readonly units: ShownUnits
}

/** The answer as a page of text: verdict, sketch, reasons, points, what to do next, and what was left out. */
export function answerText(sweep: LocatedSweep, style: TextStyle): string {
  const { units } = style
  const section = (heading: string, lines: readonly string[]) =>
    lines.length === 0 ? '' : `${heading}\n${lines.map((line) => wrapped(line, style.width, 2)).join('')}`
  const parts = [
    verdictText(sweep.answer, style),
    sketchText(sweep, style),
    section(
      sentence('heading_why', {}),
      sweep.answer.reasons.filter((reason) => !isTry(reason)).map((reason) => wordsOf(reason, units).text),
    ),
    pointsText(sweep.answer, units),
    section(sentence('heading_next', {}), stepsText(sweep, units)),
    section(sentence('heading_set_aside', {}), setAside(sweep.answer, units)),
    section(sentence('heading_noted', {}), noted(sweep, units)),
  ]
  return parts.filter((part) => part !== '').join('\n')
}

function verdictText({ verdict, sources, clips }: LocateAnswer, { units, width }: TextStyle): string {
  const [best, ...others] = sources
  const used = sentence('answer_clips_used', { used: clips.filter((clip) => clip.used).length, clips: clips.length })
  const lines =
    best === undefined
      ? [sentence(verdict === 'no leak heard' ? 'answer_no_leak_heard' : 'answer_unsure_nowhere', {})]
      : [
          sentence(verdict === 'located' ? 'answer_located' : 'answer_unsure', placeOf(best, units), units),
          sentence(verdict === 'located' ? 'answer_window_located' : 'answer_window', windowOf(best), units),
          ...others.map((source) =>
            sentence('answer_second_source', { ...placeOf(source, units), probability: source.probability }, units),
          ),
        ]
  return [...lines, used].map((line) => wrapped(line, width, 0)).join('')
}

function placeOf(source: Source, units: ShownUnits) {
  return { along_m: source.alongM, tape: wordsOf(source.tape, units).text }
}

function windowOf({ windowM: [from_m, to_m], windowProbability }: Source) {
  return { from_m, to_m, window_probability: windowProbability }
}

function sketchText({ answer, line }: LocatedSweep, { width, shades }: TextStyle): string {
  const alongsM = answer.points.map((point) => point.alongM)
  const range = lineRange(line, alongsM)
  if (range === null) return ''
  const windows = answer.sources.map((source) => source.windowM)
  const rows = sketchLine(
    { density: answer.density, range, points: answer.points, windows },
    { width: width - 4, shades },
  )
  return rows
    .map((row) => `  ${row}`.trimEnd())
    .flatMap((row) => (row === '' ? [] : [`${row}\n`]))
    .join('')
}

function pointsText({ points }: LocateAnswer, units: ShownUnits): string {
  if (points.length === 0) return ''
  const { unit, perMetre, decimals } = lengthUnit(units)
  const heading = [
    'rank',
    'point',
    `along ${unit}`,
    'nearest',
    'over floor dB',
    'band Hz',
    'rings /s',
    'bubbling',
    'clips',
  ]
  const rows = [...points]
    .sort((a, b) => a.rank - b.rank)
    .map(({ rank, point, alongM, nearestProbability, evidence }) => [
      String(rank),
      String(point),
      formatNumber(alongM * perMetre, decimals),
      formatQuantity('probability', nearestProbability),
      shownOr(evidence.overFloorDb, (db) => formatNumber(db, 1)),
      shownOr(evidence.bestBandHz, (hz) => formatQuantity('band_hz', hz).replace(' Hz', '')),
      shownOr(evidence.ringRatePerS, (rate) => formatNumber(rate, 1)),
      shownOr(evidence.bubbling, (bubbling) => formatNumber(bubbling, 2)),
      String(evidence.clipsUsed),
    ])
  const body = table(
    [heading, ...rows],
    heading.map(() => false),
  )
  return `${sentence('heading_points', {})}\n${body.replace(/^(?=.)/gm, '  ')}`
}

function shownOr(value: number | null, show: (value: number) => string): string {
  return value === null ? '-' : show(value)
}

function stepsText({ answer, line }: LocatedSweep, units: ShownUnits): string[] {
  const { listen, dig, tries } = nextSteps(answer, line, units)
  const steps = [...(listen.length === 0 ? [] : [listen]), ...dig, ...tries.map((step) => [step])]
  return [
    ...steps.map((step) => step.map((part) => wordsOf(part, units).text).join(' ')),
    ...(answer.verdict === 'located' ? [sentence('answer_not_confirmed', {}), sentence('caution_marks', {})] : []),
  ]
}

function setAside({ clips }: LocateAnswer, units: ShownUnits): string[] {
  return clips
    .filter((clip) => !clip.used)
    .map(({ file, problems }) => {
      const spoilt = problems.filter((problem) => problem.severity === 'spoilt')
      return `${printable(file)}: ${spoilt.map((problem) => said(problem, units)).join(' ')}`
    })
}

/** What used clips, points, sheet and line have to say; one line for all clips that say the same. */
function noted({ answer, problems }: LocatedSweep, units: ShownUnits): string[] {
  const groups = new Map<string, { problem: Problem; files: string[] }>()
  for (const { file, used, problems: own } of answer.clips) {
    for (const problem of used ? own : []) {
      const group = groups.get(problem.key) ?? { problem, files: [] }
      group.files.push(printable(file))
      groups.set(problem.key, group)
    }
  }
  const ofClips = [...groups.values()].map(({ problem, files: [first, ...others] }) => {
    const also = others.length === 0 ? '' : ` Also ${others.slice(0, MOST_NAMES).join(', ')}`
    const more = others.length > MOST_NAMES ? ` and ${others.length - MOST_NAMES} more` : ''
    return `${first}: ${said(problem, units)}${also}${more}${also === '' ? '' : '.'}`
  })
  return [...problems.map((problem) => said(problem, units)), ...ofClips]
}

const MOST_NAMES = 4 // chosen: more names than that say no more than their count

function said(problem: Problem, units: ShownUnits): string {
  const { text, mend } = wordsOf(problem, units)
  return mend === null ? text : `${text} ${mend}`
}
