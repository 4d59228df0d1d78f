import fc from 'fast-check'
import { expect, it } from 'vitest'
import { COVERS, FITTING_KINDS, NOISE_KINDS, PIPE_MATERIALS } from '../../../shared/line/line'
import { readLineJson } from '../../../shared/line/readLineJson'
import { writeLineJson } from '../../../shared/line/writeLineJson'

const metres = fc.double({ min: -9000, max: 9000, noNaN: true })
const above0 = fc.double({ min: 0.01, max: 19, noNaN: true })
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null })
const extra = fc.dictionary(fc.string(), fc.jsonValue({ maxDepth: 2 }), { maxKeys: 2 })
const withExtra = (known: fc.Arbitrary<object>) =>
  fc.tuple(extra, known).map(([more, fields]) => ({ ...more, ...fields }))
const word = (known: readonly string[]) => fc.oneof(fc.constantFrom(...known), fc.string({ maxLength: 8 }))

const lineFile = withExtra(
  fc.record({
    length_m: maybe(fc.double({ min: 0.01, max: 9000, noNaN: true })),
    depth_m: maybe(above0),
    air_inlet_m: maybe(metres),
    vertices: maybe(
      fc.array(fc.tuple(fc.double({ min: -99, max: 99, noNaN: true }), fc.double({ min: -99, max: 99, noNaN: true })), {
        minLength: 2,
        maxLength: 6,
      }),
    ),
    route_sd_m: maybe(above0),
    stretches: fc.array(
      withExtra(
        fc.record({
          from_m: fc.double({ min: 0, max: 5, noNaN: true }),
          to_m: fc.double({ min: 5, max: 9, noNaN: true }),
          cover: word(COVERS),
          depth_m: maybe(above0),
          dig_cost_per_m: maybe(above0),
          dig_min_per_m: maybe(above0),
        }),
      ),
      { maxLength: 3 },
    ),
    fittings: fc.array(withExtra(fc.record({ at_m: metres, kind: word(FITTING_KINDS) })), { maxLength: 3 }),
    noises: fc.array(withExtra(fc.record({ at_m: metres, kind: word(NOISE_KINDS) })), { maxLength: 3 }),
    pipe: maybe(withExtra(fc.record({ nominal_in: maybe(above0), material: word(PIPE_MATERIALS) }))),
  }),
)

it('gives the same line again when read, and the same text again when written (seed 6)', () => {
  fc.assert(
    fc.property(lineFile, (fields) => {
      const path = (fields as { vertices: number[][] | null }).vertices
      fc.pre(path === null || path.some(([x, y]) => Math.hypot(x! - path[0]![0]!, y! - path[0]![1]!) > 0.01))
      const { line } = readLineJson(fields, 'line.json')
      const text = writeLineJson(line)
      expect(readLineJson(text, 'line.json').line).toEqual(line)
      expect(writeLineJson(readLineJson(text, 'any other name').line)).toBe(text)
    }),
    { seed: 6, numRuns: 300 },
  )
})

it('leaves out what was not told', () => {
  expect(writeLineJson(readLineJson({}, 'line.json').line)).toBe('{}\n')
})

it('gives a word it did not know back as it was written, until somebody chooses another', () => {
  const { line } = readLineJson({ pipe: { nominal_in: 2, material: 'Lead' } }, 'line.json')
  expect(JSON.parse(writeLineJson(line)).pipe).toEqual({ nominal_in: 2, material: 'Lead' })
  const chosen = { ...line, pipe: { ...line.pipe!, material: 'copper' as const } }
  expect(JSON.parse(writeLineJson(chosen)).pipe).toEqual({ nominal_in: 2, material: 'copper' })
})
