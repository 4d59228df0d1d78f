import { describe, expect, it } from 'vitest'
import { lineSketch } from '../../../shared/sketch/lineSketch'
import { sketchPoints } from '../../../shared/sketch/sketchPoint'
import { twinEntries } from '../../../shared/sketch/twinEntries'
import { answerOf, bareLine, pointsAt, sourceAt } from './sketches'

const points = pointsAt([0, 2, 4])
const source = sourceAt(3, [2.5, 3.5], { key: 'tape_past_point', values: { distance_m: 1, point: 2, toward: 3 } })
const commands = lineSketch({
  line: bareLine({ airInletM: -1 }),
  points,
  answer: answerOf(points, 'located', [source]),
  chosenPoint: null,
  isConfirmed: false,
  pxPerM: 40,
})

describe('the twin list of a sketch', () => {
  it('tells everything that has words, each once', () => {
    const ids = twinEntries(commands).map(({ id }) => id)
    expect([...ids].sort()).toEqual(commands.flatMap(({ id, label }) => (label === null ? [] : [id])).sort())
  })

  it('begins with the place, how to find it, and its window; pegs follow in order along the line', () => {
    const entries = twinEntries(commands)
    expect(entries.slice(0, 3).map(({ id }) => id)).toEqual(['source-0', 'tape', 'window-0'])
    expect(entries.flatMap(({ point }) => point ?? [])).toEqual([1, 2, 3])
  })
})

describe('the points of a sketch', () => {
  it('stand there once each, in order along the line, where their first row puts them', () => {
    const rows = [
      { point: 3, alongM: 4, offsetM: 0.5 },
      { point: 1, alongM: 0, offsetM: 0 },
      { point: 3, alongM: 9, offsetM: 0 },
    ]
    expect(sketchPoints(rows, null)).toEqual([
      { point: 1, alongM: 0, offsetM: 0, isHeard: true },
      { point: 3, alongM: 4, offsetM: 0.5, isHeard: true },
    ])
  })

  it('are silent when the answer could use none of their clips', () => {
    const answer = answerOf(pointsAt([0]), 'unsure', [])
    const rows = [1, 2].map((point) => ({ point, alongM: point, offsetM: 0 }))
    expect(sketchPoints(rows, answer).map(({ isHeard }) => isHeard)).toEqual([true, false])
  })
})
