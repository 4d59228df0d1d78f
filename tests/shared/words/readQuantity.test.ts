import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatQuantity } from '../../../shared/words/formatQuantity'
import { readQuantity } from '../../../shared/words/readQuantity'
import { METRIC } from '../../../shared/words/shownUnits'
import { typedQuantity } from '../../../shared/words/typedQuantity'
import { close } from '../../support/close'

const FEET = { length: 'ft', pressure: 'psi' } as const

/** Metres read; `null` for no number. */
const metres = (text: string, units: typeof METRIC | typeof FEET = METRIC) => {
  const read = readQuantity(text, 'm', units)
  return read.kind === 'number' ? read.value : null
}

describe('a typed length', () => {
  it('is read in the units of the reader', () => {
    expect(metres('6.35')).toBe(6.35)
    close(metres('10', FEET), 3.048, { rel: 1e-12, because: '1 ft = 0.3048 m exactly (1959)' })
  })

  it('may have a comma, a sign, and any unit behind it', () => {
    expect(metres('6,35')).toBe(6.35)
    expect(metres('-1.2')).toBe(-1.2)
    expect(metres('\u22121.2')).toBe(-1.2)
    expect(metres('5 m', FEET)).toBe(5)
    for (const [text, length] of [
      ['120 cm', 1.2],
      ['50mm', 0.05],
      ['6 in', 0.1524],
      ['10 ft', 3.048],
      ['5\' 6"', 1.6764],
      ["-5'6", -1.6764],
      ['5 ft 6 in', 1.6764],
      ['5 ft 6 1/2 in', 1.6891],
      ['-3 ft 1/2 in', -0.9271],
      ['8 3/4"', 0.22225],
      ['1/2 in', 0.0127],
    ] as const) {
      close(metres(text), length, { rel: 1e-12, because: '1 in = 25.4 mm exactly (1959)' })
    }
  })

  it('is none for anything else, and nothing is not nought', () => {
    for (const text of [
      'four',
      '1 2',
      '1.2.3',
      '3 yd',
      '1e3',
      '--2',
      'm',
      '0x10',
      'Infinity',
      '1,234,5',
      '1/2',
      "5' x",
      '2 1/3 in',
      'ft',
    ]) {
      expect(readQuantity(text, 'm', METRIC), text).toEqual({ kind: 'no number' })
    }
    expect(readQuantity('  ', 'm', METRIC)).toEqual({ kind: 'empty' })
  })

  it('shows what it was when it is shown and read again, as finely as a tape (seed 8)', () => {
    fc.assert(
      fc.property(fc.double({ min: -9999, max: 9999, noNaN: true }), fc.constantFrom(METRIC, FEET), (value, units) => {
        close(metres(typedQuantity(value, 'm', units), units as typeof METRIC), value, {
          abs: 0.0016,
          because: 'three figures in metres, two in feet: half of 0.01 ft',
        })
      }),
      { seed: 8 },
    )
  })
})

it('a length that is shown in feet and inches can be typed back (seed 15)', () => {
  fc.assert(
    fc.property(fc.double({ min: -9999, max: 9999, noNaN: true }), (value) => {
      close(metres(formatQuantity('along_m', value, FEET), FEET), value, {
        abs: 0.00636,
        because: 'it is shown to half an inch: half of 12.7 mm',
      })
    }),
    { seed: 15 },
  )
})

it('a typed number without a unit takes none', () => {
  expect(readQuantity('90', 'degrees', FEET)).toEqual({ kind: 'number', value: 90 })
  expect(readQuantity('90 m', 'degrees', FEET)).toEqual({ kind: 'no number' })
  expect(typedQuantity(null, 'm', METRIC)).toBe('')
  expect(typedQuantity(100, '', METRIC)).toBe('100')
})
