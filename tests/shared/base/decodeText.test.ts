import fc from 'fast-check'
import { expect, it } from 'vitest'
import { decodeText } from '../../../shared/base/decodeText'
import { FormatError } from '../../../shared/base/errors'

const utf8 = (text: string) => new TextEncoder().encode(text)
const messageOf = (...bytes: number[]) => {
  try {
    return `read as ${decodeText(Uint8Array.from(bytes), 'sweep.csv')}`
  } catch (error) {
    if (error instanceof FormatError) return error.message
    throw error
  }
}

it('gives back any text that was encoded as UTF-8, in short and in long files (seed 3)', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
      fc.pre(!text.includes('\0') && !text.startsWith('\ufeff'))
      expect(decodeText(utf8(text), 'a')).toBe(text)
      expect(decodeText(utf8(text.repeat(60)), 'a')).toBe(text.repeat(60))
    }),
    { seed: 3, numRuns: 100 },
  )
})

it('agrees with the platform on what is UTF-8 (seed 4)', () => {
  const platform = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })
  const bytes = fc.array(
    fc.constantFrom(0x41, 0x80, 0xa0, 0xbf, 0xc0, 0xc3, 0xe0, 0xed, 0xf0, 0xf4, 0xf5, 0x90, 0x8f),
    {
      maxLength: 5,
    },
  )
  fc.assert(
    fc.property(bytes, (values) => {
      let expected: string | null = null
      try {
        expected = platform.decode(Uint8Array.from(values))
      } catch {}
      const own = messageOf(...values)
      expect(own.startsWith('read as ') ? own.slice('read as '.length) : null).toBe(expected)
    }),
    { seed: 4, numRuns: 2000 },
  )
})

it('leaves a byte order mark out', () => {
  expect(messageOf(0xef, 0xbb, 0xbf, 0x61)).toBe('read as a')
})

it('names the row of a Latin-1 byte and the mend', () => {
  expect(messageOf(0x61, 0x0a, 0x62, 0xe9, 0x2c)).toBe(
    'sweep.csv, row 2: the byte E9 is not UTF-8; save the file again as UTF-8',
  )
})

it('says so when the file is UTF-16 or no text', () => {
  expect(messageOf(0xff, 0xfe, 0x61, 0x00)).toBe('sweep.csv: the text is UTF-16; save it again as UTF-8')
  expect(messageOf(0xfe, 0xff, 0x00, 0x61)).toBe('sweep.csv: the text is UTF-16; save it again as UTF-8')
  expect(messageOf(0x61, 0x00)).toBe('sweep.csv, row 1: there is a NUL byte; this is no text file in UTF-8')
})
