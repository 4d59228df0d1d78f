import fc from 'fast-check'
import { expect, it } from 'vitest'
import { printable, shown } from '../../../shared/base/shown'

it('keeps any text on one line and away from the terminal (seed 5)', () => {
  const nasty = fc.array(fc.constantFrom('\n', '\r', '\t', '\0', '\u001b[2J', '\u009b', '\u202e', '\u2028', 'a', 'é'))
  fc.assert(
    fc.property(nasty, (pieces) => {
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not come through
      expect(printable(pieces.join(''))).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2028\u2029]/)
    }),
    { seed: 5, numRuns: 200 },
  )
})

it('leaves ordinary text as it is, letters of any language too', () => {
  expect(printable('Brunnen am Süd-Tor, 噴水 💧')).toBe('Brunnen am Süd-Tor, 噴水 💧')
})

it('cuts what is long and names what cannot be shown', () => {
  expect(printable('a'.repeat(300))).toBe(`${'a'.repeat(200)}...`)
  expect(shown('a'.repeat(70))).toBe(`"${'a'.repeat(60)}..."`)
  expect([shown('3,5\n'), shown(7), shown(null), shown([1, 2]), shown({})]).toEqual([
    '"3,5\\n"',
    '7',
    'null',
    'a list of 2',
    'an object',
  ])
})
