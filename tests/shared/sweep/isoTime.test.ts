import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isoToSeconds, secondsToIso } from '../../../shared/sweep/isoTime'
import { close } from '../../support/close'

const minutes = fc.integer({ min: -1439, max: 1439 })

/** An offset as the format writes it. */
const offsetText = (offset: number) => {
  const two = (value: number) => String(value).padStart(2, '0')
  return `${offset < 0 ? '-' : '+'}${two(Math.floor(Math.abs(offset) / 60))}:${two(Math.abs(offset) % 60)}`
}

describe('an ISO 8601 time with an offset', () => {
  it('is what the language’s own reader makes of it, from the year 1 to 9999 (seed 12)', () => {
    const milliseconds = fc.integer({ min: Date.parse('0001-01-02T00:00Z'), max: Date.parse('9999-12-30T00:00Z') })
    fc.assert(
      fc.property(milliseconds, minutes, (ms, offset) => {
        const text = new Date(ms).toISOString().replace('Z', offsetText(offset))
        expect(Math.round(isoToSeconds(text)! * 1000)).toBe(Date.parse(text))
      }),
      { seed: 12, numRuns: 500 },
    )
  })

  it('may leave out seconds, put a space for the T, and write its offset in any of three ways', () => {
    const expected = Date.parse('2026-05-04T09:30:00+02:00') / 1000
    for (const text of ['2026-05-04T09:30+02:00', '2026-05-04 09:30:00+02', '2026-05-04t09:30:00.000+0200']) {
      expect(isoToSeconds(text), text).toBe(expected)
    }
    expect(isoToSeconds('2026-05-04T07:30Z')).toBe(expected)
  })

  it('is none without an offset, on a day or at an hour that does not exist, or in another form', () => {
    const wrong = [
      '2026-05-04T09:30',
      '2026-02-30T09:30Z',
      '2026-13-01T09:30Z',
      '2026-00-10T09:30Z',
      '2026-05-00T09:30Z',
    ]
    const more = [
      '2026-05-04T24:30Z',
      '2026-05-04T09:60Z',
      '2026-05-04',
      '04.05.2026 09:30',
      '2026-05-04T09:30+25:00',
      '',
    ]
    for (const text of [...wrong, ...more]) expect(isoToSeconds(text), text).toBeNull()
  })

  it('knows leap years as the Gregorian calendar has them', () => {
    expect(isoToSeconds('2024-02-29T00:00Z')).not.toBeNull()
    expect(isoToSeconds('2000-02-29T00:00Z')).not.toBeNull()
    expect(isoToSeconds('1900-02-29T00:00Z')).toBeNull()
  })
})

it('is written in UTC with the shortest fraction', () => {
  expect(secondsToIso(0)).toBe('1970-01-01T00:00:00Z')
  expect(secondsToIso(1_777_879_800.25)).toBe('2026-05-04T07:30:00.25Z')
  expect(secondsToIso(-0.5)).toBe('1969-12-31T23:59:59.5Z')
})

it('reads back as the same number, from 1971 on, and to a nanosecond before (seed 13)', () => {
  fc.assert(
    fc.property(fc.double({ min: 4e7, max: 4e9, noNaN: true }), (seconds) => {
      expect(isoToSeconds(secondsToIso(seconds))).toBe(seconds)
      expect(isoToSeconds(secondsToIso(-seconds))).toBe(-seconds)
    }),
    { seed: 13, numRuns: 500 },
  )
  close(isoToSeconds(secondsToIso(-5e-324)), 0, { abs: 1.1e-9, because: 'nine digits' })
})
