import { expect, it } from 'vitest'
import { readLineJson } from '../../../shared/line/readLineJson'
import { opinionSketch } from '../../../shared/sketch/opinionSketch'

const { line } = readLineJson(
  {
    length_m: 10,
    vertices: [
      [0, 0],
      [6, 0],
      [6, 4],
    ],
  },
  'line.json',
)
const points = [1, 2, 3].map((point) => ({ point, alongM: 3 * point, offsetM: 0, isHeard: true }))
const named = [
  { letter: 'A', alongM: 5, windowM: [4, 7] as const, isMachine: false },
  { letter: 'B', alongM: 5.5, windowM: [5, 6] as const, isMachine: true },
]
const pooled = { alongM: [0, 4, 5, 6, 10], perM: [0, 0.1, 0.6, 0.1, 0] }
const draw = (pxPerM: number) => opinionSketch({ line, points, named, pooled, chosenPoint: 2, pxPerM })

it('draws each window in a lane of its own, the machine dashed and inferred, a person solid, with words for both', () => {
  const commands = draw(40)
  const lane = (letter: string) => commands.find(({ id }) => id === `named-${letter}`)!
  expect(lane('A')).toMatchObject({ stroke: 'solid', certainty: 'measured', label: { key: 'sketch_named' } })
  expect(lane('B')).toMatchObject({ stroke: 'dashed', certainty: 'inferred', label: { values: { letter: 'B' } } })
  const height = (letter: string) => (lane(letter) as { places: readonly { yM: number }[] }).places[0]!.yM
  expect(height('A')).not.toBe(height('B'))
  expect(commands.filter(({ id }) => id.startsWith('band-')).length).toBeGreaterThan(0)
  expect(commands.find(({ id }) => id === 'band-0')!.label).toEqual({ key: 'sketch_pooled', values: {} })
  expect(commands.filter(({ kind }) => kind === 'peg')).toHaveLength(3)
})

it('has finite places only, with breadth and without, and each id once', () => {
  for (const pxPerM of [40, Number.POSITIVE_INFINITY]) {
    const commands = draw(pxPerM)
    expect(JSON.stringify(commands)).not.toContain('null,null')
    for (const command of commands) {
      const places = 'places' in command ? command.places : [command.at]
      for (const { xM, yM } of places) expect(Number.isFinite(xM) && Number.isFinite(yM)).toBe(true)
    }
    expect(new Set(commands.map(({ id }) => id)).size).toBe(commands.length)
  }
})

it('is empty for a line without length and points', () => {
  const bare = readLineJson({}, 'line.json').line
  expect(opinionSketch({ line: bare, points: [], named, pooled: null, chosenPoint: null, pxPerM: 40 })).toEqual([])
})
