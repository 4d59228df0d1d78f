import type { Line } from '../line/line'
import { linePath } from '../line/linePath'
import { tapeDistance } from '../line/tapeDistance'
import type { LocateAnswer, PointAnswer } from '../locate/answer'
import { type Keyed, wordsOf } from '../words/sentence'
import type { ShownUnits } from '../words/shownUnits'

/** Nearer than this is at the point, m: nobody lays a tape better. */
const AT_POINT_M = 0.01

/** What to do next, in sentences that begin with the first step. */
export interface NextSteps {
  readonly listen: readonly Keyed[]
  /** One list a piece, what belongs to it behind it. Empty unless the leak is located: nobody is sent digging by less. */
  readonly dig: readonly (readonly Keyed[])[]
  /** After no leak was heard: what may let it be heard. */
  readonly tries: readonly Keyed[]
}

/**
 * The next steps of an answer, every place told by tape from a numbered point as well as along the line.
 *
 * @param units The tape's, since the place by tape is put into the sentence as words.
 */
export function nextSteps(answer: LocateAnswer, line: Line, units: ShownUnits): NextSteps {
  const corners = linePath(line).alongM.subarray(1, -1)
  const tapeTo: TapeTo = (alongM) => wordsOf(tapeDistance(alongM, answer.points, corners), units).text
  return {
    listen: listenSteps(answer, tapeTo),
    dig: answer.verdict === 'located' ? answer.digFirst.map((piece, i) => digStep(piece, i, tapeTo)) : [],
    tries: answer.reasons.filter(isTry),
  }
}

/** Whether a reason is something to try rather than something that was found. */
export function isTry({ key }: Keyed): boolean {
  return key.startsWith('next_try_')
}

type TapeTo = (alongM: number) => string
type Advice = LocateAnswer['listenNext'][number]

function listenSteps(answer: LocateAnswer, tapeTo: TapeTo): Keyed[] {
  const { listenNext, sources, points, reasons } = answer
  const [first, ...others] = listenNext
  if (first === undefined) return []
  const [low, high] = sources[0]?.windowM ?? [0, 0]
  const widths = { window_m: high - low, expected_window_m: first.expectedWindowM }
  const place = { tape: tapeTo(first.alongM), along_m: first.alongM }
  if (first.offsetM !== 0) {
    return [
      { key: 'next_listen_across', values: { ...place, offset_m: Math.abs(first.offsetM) } },
      { key: 'next_listen_all_three', values: widths },
    ]
  }
  const [second] = others
  const isPastEnd = reasons.some(({ key }) => key === 'reason_past_start' || key === 'reason_past_end')
  const then: Keyed[] =
    isPastEnd && second
      ? [{ key: 'next_listen_then', values: { tape: tapeTo(second.alongM), along_m: second.alongM } }]
      : []
  if (first.expectedWindowM >= widths.window_m) return [{ key: 'next_listen_anyway', values: place }, ...then]
  return [{ key: keyFor(first, points), values: { ...place, ...widths } }, ...then]
}

function keyFor({ alongM }: Advice, points: readonly PointAnswer[]) {
  const here = points.filter((point) => Math.abs(point.alongM - alongM) <= AT_POINT_M)
  if (here.length === 0) return 'next_listen'
  return here.some(({ evidence }) => evidence.clipsUsed > 0) ? 'next_listen_again' : 'next_listen_set_aside'
}

function digStep(piece: LocateAnswer['digFirst'][number], rank: number, tapeTo: TapeTo): Keyed[] {
  const { fromM, toM, probability, cost } = piece
  const values = { from_m: fromM, to_m: toM, probability }
  return [
    { key: rank === 0 ? 'next_dig' : 'next_dig_then', values },
    { key: 'next_dig_ends', values: { from: tapeTo(fromM), to: tapeTo(toM) } },
    ...(cost === null ? [] : [{ key: 'next_dig_cost', values: { cost } }]),
  ]
}
