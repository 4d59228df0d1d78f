import { lineLegs } from '../../../../../shared/line/lineLegs'
import type { ModeContext } from './padMode'

/** Number of the corner that a handle is of, the start being 0. */
export function cornerNumber(id: string): number {
  return Number(id.split('-')[1])
}

/** A corner and the leg that ends there, in words: what is read while it is pulled. */
export function cornerWords(
  { jobLine, say }: Pick<ModeContext, 'jobLine' | 'say'>,
  index: number,
  count: number,
): string {
  if (index === 0) return say('label_pad_start')
  const legs = lineLegs(jobLine.line)
  const leg = legs[index - 1]
  if (leg === undefined) return say('label_pad_start')
  const values = { number: index, length_m: leg.lengthM }
  const name = index === count - 1 ? say('label_pad_end', values) : say('label_pad_corner', values)
  return index === 1 ? name : `${name}, ${turnWords(say, leg.turnDeg)}`
}

function turnWords(say: ModeContext['say'], turnDeg: number): string {
  const angle = Math.round(Math.abs(turnDeg) * 10) / 10
  if (angle === 0) return say('label_pad_straight')
  if (angle === 90) return say(turnDeg > 0 ? 'label_pad_square_left' : 'label_pad_square_right')
  return say(turnDeg > 0 ? 'label_pad_turn_left' : 'label_pad_turn_right', { angle })
}
