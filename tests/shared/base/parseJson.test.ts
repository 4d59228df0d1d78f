import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FormatError } from '../../../shared/base/errors'
import { parseJson } from '../../../shared/base/parseJson'

const read = (text: string) => parseJson(text, 'a.json')

/** What is refused, with the message: the language's own reader is the judge of whether it is JSON at all. */
const messageOf = (text: string): string => {
  try {
    read(text)
  } catch (error) {
    if (error instanceof FormatError) return error.message
    throw error
  }
  return 'no error'
}

describe('a JSON text', () => {
  it('reads as the language itself reads it (seed 1)', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 5 }), (text) => {
        const expected = JSON.parse(text, (_, value) => (Object.is(value, -0) ? 0 : value))
        expect(read(text)).toEqual(expected)
      }),
      { seed: 1, numRuns: 300 },
    )
  })

  it('reads texts with escapes, controls above U+007F and lone surrogates as the language does', () => {
    const texts = [
      '"\\u00e9\\n\\"\\\\\\/\\b\\f\\r\\t"',
      '"\u007f\u0085"',
      '"\\ud800"',
      '"\ud83d\udca7 é"',
      ' [ ] ',
      '{"":{}}',
    ]
    for (const text of texts) expect(read(text)).toEqual(JSON.parse(text))
  })

  it('is refused exactly where the language refuses it, after one random change (seed 2)', () => {
    const base = '{"a": [1, -2.5e3, true, null], "b": {"c": "d\\n"}}'
    const change = fc.record({
      at: fc.nat(base.length - 1),
      put: fc.constantFrom('', '"', '{', ']', ',', '0', '.', 'x', '\\'),
    })
    fc.assert(
      fc.property(change, ({ at, put }) => {
        const text = base.slice(0, at) + put + base.slice(at + 1)
        let own = true
        let language = true
        try {
          JSON.parse(text)
        } catch {
          language = false
        }
        try {
          read(text)
        } catch (error) {
          own = false
          expect((error as Error).message).toMatch(/^a\.json, line 1: .+/)
        }
        // The language takes the last of two equal keys; this reader refuses them.
        if (!messageOf(text).includes('stands twice')) expect(own, text).toBe(language)
      }),
      { seed: 2, numRuns: 400 },
    )
  })

  it('may begin with a byte order mark', () => {
    expect(read('\ufeff{"a":1}')).toEqual({ a: 1 })
  })

  it('gives 0 for −0', () => {
    expect(Object.is(read('-0'), 0)).toBe(true)
  })
})

describe('a mistake in a JSON text', () => {
  it('is told with its line', () => {
    expect(messageOf('{\n  "depth_m": NaN\n}')).toBe(
      'a.json, line 2: "NaN" is no number; write one like 3.5, or null when it is not known',
    )
    expect(messageOf('{\n\n  "a": 1,\n}')).toBe('a.json, line 4: a key in double quotes is expected, not "}"')
    expect(messageOf('{"a": 1} x')).toBe('a.json, line 1: "x" stands after the end; remove it')
    expect(messageOf('{"a": "b\n"}')).toContain('runs over the end of its line')
    expect(messageOf('')).toBe('a.json, line 1: a value is expected, not the end of the file')
  })

  it('may be a number no double holds, an Infinity, or a hexadecimal number', () => {
    for (const text of ['1e999', '-1e999', 'Infinity', '0x10', '.5', '1.', '01', '+1']) {
      expect(messageOf(text), text).toMatch(/is no number|is too large a number/)
    }
  })

  it('may be a key that stands twice', () => {
    expect(messageOf('{"a": 1, "a": 2}')).toBe('a.json, line 1: the key "a" stands twice; keep one of them')
  })

  it('may be nesting without end, which costs no stack', () => {
    expect(messageOf('['.repeat(100_000))).toContain('nested more than 32 deep')
    expect(messageOf('{"a":'.repeat(100_000))).toContain('nested more than 32 deep')
  })
})

it('keeps a __proto__ key as plain data and leaves the prototype of everything alone', () => {
  const value = read('{"__proto__": {"polluted": true}}') as object
  expect(Object.keys(value)).toEqual(['__proto__'])
  expect(Object.getPrototypeOf(value)).toBe(Object.prototype)
  expect(({} as Record<string, unknown>).polluted).toBeUndefined()
})
