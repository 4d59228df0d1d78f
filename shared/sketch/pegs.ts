import { directionAlong, placeAlong } from '../line/placeAlong'
import type { LocateAnswer } from '../locate/answer'
import type { DrawPeg } from './drawList'
import { pegSide } from './pegSide'
import type { SketchFrame } from './sketchFrame'
import type { SketchPoint } from './sketchPoint'

/** Each point as a peg at its place, off the line where it was off the line. */
export function pegs(
  frame: SketchFrame,
  points: readonly SketchPoint[],
  answer: LocateAnswer | null,
  chosenPoint: number | null,
): DrawPeg[] {
  const best = answer === null || answer.verdict === 'no leak heard' ? null : answer.points.find(isFirst)?.point
  const likely = new Map(answer?.points.map(({ point, nearestProbability }) => [point, nearestProbability]))
  return points.map(({ point, alongM, offsetM, isHeard }) => {
    const { x, y } = directionAlong(frame.path, alongM)
    const side = offsetM === 0 ? pegSide(frame.path, alongM) : Math.sign(offsetM)
    const probability = isHeard ? likely.get(point) : undefined
    const values = { point, along_m: alongM, offset_m: Math.abs(offsetM) }
    return {
      kind: 'peg',
      id: `peg-${point}`,
      label: {
        key: pegKey(offsetM, isHeard, probability),
        values: probability === undefined ? values : { ...values, probability },
      },
      certainty: 'measured',
      at: placeAlong(frame.path, alongM, offsetM),
      point,
      state: !isHeard ? 'silent' : point === best ? 'best' : 'plain',
      chosen: point === chosenPoint,
      side: [-y * side, x * side],
    }
  })
}

const PEG_WORDS = {
  silent: { on: 'sketch_peg_silent', left: 'sketch_peg_silent_left', right: 'sketch_peg_silent_right' },
  plain: { on: 'sketch_peg', left: 'sketch_peg_left', right: 'sketch_peg_right' },
  likely: { on: 'sketch_peg_likely', left: 'sketch_peg_likely_left', right: 'sketch_peg_likely_right' },
} as const

function pegKey(offsetM: number, isHeard: boolean, probability: number | undefined): string {
  const where = offsetM === 0 ? 'on' : offsetM > 0 ? 'left' : 'right'
  return PEG_WORDS[!isHeard ? 'silent' : probability === undefined ? 'plain' : 'likely'][where]
}

function isFirst({ rank }: { readonly rank: number }): boolean {
  return rank === 1
}
