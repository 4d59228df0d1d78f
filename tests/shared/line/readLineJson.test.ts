import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FormatError } from '../../../shared/base/errors'
import { linePath } from '../../../shared/line/linePath'
import { readLineJson } from '../../../shared/line/readLineJson'
import { close } from '../../support/close'

const read = (fields: unknown) => readLineJson(JSON.stringify(fields), 'line.json')
const messageOf = (source: unknown): string => {
  try {
    readLineJson(source, 'line.json')
  } catch (error) {
    if (error instanceof FormatError) return error.message
    throw error
  }
  return 'no error'
}
const STRETCH = { from_m: 0, to_m: 2, cover: 'grass' }

describe('a line file', () => {
  it('reads every key of the format', () => {
    const { line, problems } = read({
      length_m: 14,
      depth_m: 0.4,
      air_inlet_m: -1.5,
      vertices: [
        [0, 0],
        [10, 0],
        [10, 4],
      ],
      route_sd_m: 0.2,
      stretches: [{ ...STRETCH, depth_m: 0.5, dig_cost_per_m: 40, dig_min_per_m: 25 }],
      fittings: [{ at_m: 10, kind: 'elbow' }],
      noises: [{ at_m: 15, kind: 'pump' }],
      pipe: { nominal_in: 2, material: 'pvc' },
    })
    expect(problems).toEqual([])
    expect(line).toEqual({
      lengthM: 14,
      depthM: 0.4,
      airInletM: -1.5,
      vertices: [
        { xM: 0, yM: 0 },
        { xM: 10, yM: 0 },
        { xM: 10, yM: 4 },
      ],
      routeSdM: 0.2,
      stretches: [{ fromM: 0, toM: 2, cover: 'grass', depthM: 0.5, digCostPerM: 40, digMinPerM: 25 }],
      fittings: [{ atM: 10, kind: 'elbow' }],
      noises: [{ atM: 15, kind: 'pump' }],
      pipe: { nominalIn: 2, material: 'pvc' },
      unknown: {},
    })
  })

  it('may tell nothing at all, and null is the same as not told', () => {
    const nothing = read({}).line
    expect(nothing.lengthM).toBeNull()
    expect(read({ length_m: null, depth_m: null, vertices: null, stretches: null, pipe: null }).line).toEqual(nothing)
  })

  it('takes the length of its path when no length was typed', () => {
    expect(
      read({
        vertices: [
          [1, 1],
          [4, 5],
        ],
      }).line.lengthM,
    ).toBe(5) // 3-4-5 triangle
  })
})

describe('a path and a typed length', () => {
  const path = [
    [2, 3],
    [2, 13],
    [6, 13],
  ] // 14 m

  it('that differ by more than 1 % leave the typed length and stretch the path evenly, with a warning', () => {
    const { line, problems } = read({ length_m: 21, vertices: path })
    expect(problems).toEqual([{ key: 'line_path_stretched', severity: 'note', values: { path_m: 14, length_m: 21 } }])
    expect(line.lengthM).toBe(21)
    expect(line.vertices).toEqual([
      { xM: 2, yM: 3 },
      { xM: 2, yM: 18 },
      { xM: 8, yM: 18 },
    ])
  })

  it('that differ by less agree without a warning, and the path still ends at the typed length', () => {
    const { line, problems } = read({ length_m: 14.1, vertices: path })
    expect(problems).toEqual([])
    close(linePath(line).alongM.at(-1), 14.1, { rel: 1e-12, because: 'rounding of one factor' })
  })
})

describe('what this version does not know', () => {
  it('is kept, whole file and parts alike', () => {
    const { line, problems } = read({
      surveyed_by: { crew: ['A', 'B'] },
      stretches: [{ ...STRETCH, wet: true }],
      fittings: [{ at_m: 1, kind: 'tee', glued: null }],
      noises: [{ at_m: 1, kind: 'motor', hours: '9-17' }],
      pipe: { nominal_in: 2, material: 'pe', made_in: 1999 },
    })
    expect(problems).toEqual([])
    expect(line.unknown).toEqual({ surveyed_by: { crew: ['A', 'B'] } })
    expect(line.stretches[0]!.unknown).toEqual({ wet: true })
    expect(line.fittings[0]!.unknown).toEqual({ glued: null })
    expect(line.noises[0]!.unknown).toEqual({ hours: '9-17' })
    expect(line.pipe!.unknown).toEqual({ made_in: 1999 })
  })

  it('is read as other where a word is expected, with a warning, and kept as written', () => {
    const { line, problems } = read({
      stretches: [{ ...STRETCH, cover: 'Moss' }],
      fittings: [{ at_m: 1, kind: 'reducer' }],
      noises: [{ at_m: 1, kind: 'band' }],
      pipe: { material: 'lead' },
    })
    expect([line.stretches[0]!.cover, line.fittings[0]!.kind, line.noises[0]!.kind, line.pipe!.material]).toEqual(
      Array(4).fill('other'),
    )
    expect(line.stretches[0]!.unknown).toEqual({ cover: 'Moss' })
    expect(problems.map(({ key, values }) => [key, values.place, values.value])).toEqual([
      ['line_value_unknown', 'stretches[0].cover', 'Moss'],
      ['line_value_unknown', 'fittings[0].kind', 'reducer'],
      ['line_value_unknown', 'noises[0].kind', 'band'],
      ['line_value_unknown', 'pipe.material', 'lead'],
    ])
  })

  it('reads known words in any case without a warning', () => {
    expect(read({ stretches: [{ ...STRETCH, cover: ' Slab ' }] })).toMatchObject({
      line: { stretches: [{ cover: 'slab' }] },
      problems: [],
    })
  })

  it('is asked about when it looks like a slip of the finger', () => {
    const { line, problems } = read({ lenght_m: 14 })
    expect(line.lengthM).toBeNull()
    expect(problems).toEqual([
      { key: 'line_key_like', severity: 'note', values: { name: 'lenght_m', meant: 'length_m' } },
    ])
  })

  it('is left out when it is a key that reaches for the prototype', () => {
    const { line, problems } = readLineJson(
      '{"__proto__": {"depth_m": 9}, "constructor": 1, "a": {"__proto__": 1}}',
      'l',
    )
    expect(line.depthM).toBeNull()
    expect(line.unknown).toEqual({ constructor: 1, a: {} })
    expect(Object.hasOwn(line.unknown.a as object, '__proto__')).toBe(false)
    expect(problems.map((problem) => problem.key)).toEqual(['line_key_left_out'])
  })

  it('does not take the keys every object inherits for told ones', () => {
    expect(messageOf({ stretches: [Object.create({ from_m: 1, to_m: 2, cover: 'grass' })] })).toContain(
      'stretches[0].from_m: is missing',
    )
  })
})

describe('parts that cannot all be right', () => {
  it('are told of: stretches that overlap, a fitting past the end', () => {
    const { problems } = read({
      length_m: 10,
      stretches: [
        { from_m: 4, to_m: 9, cover: 'soil' },
        { from_m: 0, to_m: 5, cover: 'grass' },
      ],
      fittings: [{ at_m: 12, kind: 'elbow' }],
    })
    expect(problems).toEqual([
      { key: 'line_stretches_overlap', severity: 'note', values: { from_m: 4, to_m: 5 } },
      { key: 'line_beyond_end', severity: 'note', values: { place: 'fittings[0].at_m', at_m: 12, length_m: 10 } },
    ])
  })

  it('are nothing to tell when stretches only touch', () => {
    expect(read({ stretches: [STRETCH, { from_m: 2, to_m: 4, cover: 'slab' }] }).problems).toEqual([])
  })
})

describe('a wrong line file is refused with the place and the mend', () => {
  const cases: [string, unknown, string][] = [
    [
      'text for a number',
      { stretches: [STRETCH, STRETCH, { ...STRETCH, to_m: '3,5' }] },
      'line.json, stretches[2].to_m: is the text "3,5"; write a number without quotes, like 3.5',
    ],
    ['a negative length', { length_m: -3 }, 'line.json, length_m: is -3; a number from 0.01 to 10000 is expected'],
    ['a line of no length', { length_m: 0 }, 'line.json, length_m: is 0; a number from 0.01 to 10000 is expected'],
    ['a line of 20 km', { length_m: 20_000 }, 'line.json, length_m: is 20000; a number from 0.01 to 10000 is expected'],
    [
      'a cover too thin to leave a finite answer',
      { stretches: [{ ...STRETCH, depth_m: 1e-300 }] },
      'line.json, stretches[0].depth_m: is 1e-300; a number from 0.01 to 20 is expected',
    ],
    [
      'more machines than can be told apart',
      { noises: Array.from({ length: 13 }, () => ({ at_m: 1, kind: 'pump' })) },
      'line.json, noises: has 13 entries, and at most 12 are read; remove some',
    ],
    ['a pipe above the ground', { depth_m: -0.4 }, 'line.json, depth_m: is -0.4; a number from 0.01 to 20 is expected'],
    [
      'from past to',
      { stretches: [{ ...STRETCH, from_m: 5 }] },
      'line.json, stretches[0]: from_m 5 is past to_m 2; write the nearer end first',
    ],
    [
      'a stretch without an end',
      { stretches: [{ from_m: 0, cover: 'grass' }] },
      'line.json, stretches[0].to_m: is missing; write a number',
    ],
    [
      'a stretch without a cover',
      { stretches: [{ from_m: 0, to_m: 1 }] },
      'line.json, stretches[0].cover: is missing; write one of grass, soil, gravel, pavers, slab, other',
    ],
    [
      'a number for a word',
      { fittings: [{ at_m: 1, kind: 3 }] },
      'line.json, fittings[0].kind: is 3; write one of elbow, tee, coupling, valve, end, other',
    ],
    ['true for a number', { route_sd_m: true }, 'line.json, route_sd_m: is true; write a number, like 3.5'],
    ['no list', { stretches: {} }, 'line.json, stretches: is an object; a list in brackets [ ] is expected'],
    ['no object', { noises: [7] }, 'line.json, noises[0]: is 7; an object in braces { } is expected'],
    ['a list for the whole', [], 'line.json: is a list of 0; an object in braces { } is expected'],
    [
      'a corner of three numbers',
      {
        vertices: [
          [0, 0],
          [1, 2, 3],
        ],
      },
      'line.json, vertices[1]: is a list of 3; two numbers [x, y] are expected',
    ],
    [
      'a corner of text',
      {
        vertices: [
          [0, 0],
          ['1', 2],
        ],
      },
      'line.json, vertices[1][0]: is the text "1"; write a number without quotes, like 3.5',
    ],
    [
      'a path of one corner',
      { vertices: [[0, 0]] },
      'line.json, vertices: has too few corners, 1; a path needs its start and its end',
    ],
    [
      'a path of no length',
      {
        vertices: [
          [1, 1],
          [1, 1],
        ],
      },
      'line.json, vertices: are all in one place; a path needs a length',
    ],
    [
      'a path of 20 km',
      {
        vertices: [
          [-9000, 0],
          [9000, 0],
        ],
      },
      'line.json, vertices: make a path of 18000 m; at most 10000 is read',
    ],
    [
      'too many corners',
      { vertices: Array.from({ length: 1001 }, (_, i) => [i, 0]) },
      'line.json, vertices: has 1001 entries, and at most 1000 are read; remove some',
    ],
    ['a pipe of text', { pipe: '2 in pvc' }, 'line.json, pipe: is "2 in pvc"; an object in braces { } is expected'],
  ]
  it.each(cases)('%s', (_, fields, message) => {
    expect(messageOf(JSON.stringify(fields))).toBe(message)
  })

  it('NaN and Infinity, in the text and already parsed', () => {
    expect(messageOf('{"depth_m": NaN}')).toContain('line.json, line 1: "NaN" is no number')
    expect(messageOf('{"depth_m": 1e400}')).toContain('line.json, line 1: "1e400" is too large a number')
    expect(messageOf({ depth_m: Number.NaN })).toBe('line.json, depth_m: is NaN; write a number, or null when unknown')
    expect(messageOf({ length_m: Number.POSITIVE_INFINITY })).toContain('line.json, length_m: is Infinity')
    expect(messageOf({ extra: Number.NaN })).toContain('line.json, extra: is NaN, which JSON cannot hold')
  })

  it('a file too large, or nested without end, parsed or not', () => {
    expect(messageOf(' '.repeat(1_000_001))).toBe(
      'line.json: holds 1000001 characters, and at most 1000000 are read; keep to the line',
    )
    let deep: unknown = 1
    for (let i = 0; i < 5000; i++) deep = [deep]
    expect(messageOf({ extra: deep })).toContain('is nested more than 32 deep')
  })
})

it('throws nothing but one line with its name, whatever the file holds (seed 16)', () => {
  const key = fc.constantFrom(
    'length_m',
    'vertices',
    'stretches',
    'fittings',
    'pipe',
    'from_m',
    'to_m',
    'cover',
    'at_m',
    'kind',
    'x',
  )
  const { value } = fc.letrec((tie) => ({
    value: fc.oneof(
      { maxDepth: 4 },
      fc.constantFrom(null, true, 0, -1, 3.5, 1e300, '', 'grass', '1\n'),
      fc.array(tie('value'), { maxLength: 3 }),
      fc.dictionary(key, tie('value'), { maxKeys: 5 }),
    ),
  }))
  fc.assert(
    fc.property(value, (fields) => {
      const message = messageOf(JSON.stringify(fields))
      if (message !== 'no error') expect(message).toMatch(/^line\.json(?:, [\w.[\]]+)?: [^\n\r]+$/)
    }),
    { seed: 16, numRuns: 1000 },
  )
})
