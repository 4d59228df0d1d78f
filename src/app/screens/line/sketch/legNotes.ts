import type { SketchPlace } from '../../../../../shared/line/line'
import { lineLegs } from '../../../../../shared/line/lineLegs'
import type { PadNote } from '../../../sketch/pad/padNote'
import type { ModeContext } from './padMode'

/** A turn that is nearer to 90 degrees than this is drawn as a right angle. Chosen: nobody lays a pipe better. */
const SQUARE_DEG = 0.05

/** Lengths beside the legs; at corners the sign of a right angle, or how many degrees. */
export function legNotes({ jobLine, say }: ModeContext, corners: readonly SketchPlace[]): PadNote[] {
  const legs = lineLegs(jobLine.line)
  return legs.flatMap(({ lengthM, turnDeg }, i): PadNote[] => {
    const [from, to] = [corners[i]!, corners[i + 1]!]
    const [x, y] = [(to.xM - from.xM) / lengthM, (to.yM - from.yM) / lengthM]
    const isUp = x > 0 || (x === 0 && y < 0)
    const length: PadNote = {
      kind: 'text',
      id: `length-${i}`,
      at: { xM: (from.xM + to.xM) / 2, yM: (from.yM + to.yM) / 2 },
      away: isUp ? [-y, x] : [y, -x],
      words: say('label_length', { m: lengthM }),
    }
    if (i === 0) return [length]
    const before = corners[i - 1]!
    const beforeM = legs[i - 1]!.lengthM
    const back: readonly [number, number] = [(before.xM - from.xM) / beforeM, (before.yM - from.yM) / beforeM]
    const bend = bendNote({ id: `bend-${i}`, at: from, along: back, beside: [x, y] }, turnDeg, say)
    return bend === null ? [length] : [length, bend]
  })
}

interface Bend {
  readonly id: string
  readonly at: SketchPlace
  readonly along: readonly [number, number]
  readonly beside: readonly [number, number]
}

function bendNote(bend: Bend, turnDeg: number, say: ModeContext['say']): PadNote | null {
  const angle = Math.abs(turnDeg)
  if (Math.abs(angle - 90) < SQUARE_DEG) return { kind: 'square', ...bend }
  if (angle < SQUARE_DEG) return null
  const [x, y] = [-(bend.along[0] + bend.beside[0]), -(bend.along[1] + bend.beside[1])]
  const length = Math.hypot(x, y) || 1
  const words = say('label_pad_degrees', { angle: Math.round(angle * 10) / 10 })
  return { kind: 'text', id: bend.id, at: bend.at, away: [x / length, y / length], words }
}
