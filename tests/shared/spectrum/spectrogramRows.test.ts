import { describe, expect, it } from 'vitest'
import { InputError } from '../../../shared/base/errors'
import { spectrogram } from '../../../shared/spectrum/spectrogram'
import { spectrogramRows } from '../../../shared/spectrum/spectrogramRows'
import { close } from '../../support/close'

const RATE_HZ = 16_000
const tone = (hz: number) =>
  Float32Array.from({ length: RATE_HZ }, (_, n) => Math.sin((2 * Math.PI * hz * n) / RATE_HZ))
const pictureOf = (hz: number) => spectrogram(tone(hz), RATE_HZ, { segmentLength: 1024, overlap: 0.5 })
const options = { lowHz: 60, highHz: 8000, rowCount: 100 }

/** Row with the darkest shade in the middle column. */
function darkestRow({ shades, columnCount, rowCount }: ReturnType<typeof spectrogramRows>): number {
  const column = Math.floor(columnCount / 2)
  const shade = (row: number) => shades[row * columnCount + column]!
  return Array.from({ length: rowCount }, (_, row) => row).reduce((best, row) =>
    shade(row) > shade(best) ? row : best,
  )
}

describe('a spectrogram in rows', () => {
  it.each([125, 500, 2000, 6000])('shows a tone of %d Hz in the row of its pitch', (hz) => {
    const rows = spectrogramRows(pictureOf(hz), { ...options, rangeDbPerHz: [-60, 0] })
    const expected = (Math.log(8000 / hz) / Math.log(8000 / 60)) * 100
    const binInRows = (Math.log(1 + 15.6 / hz) / Math.log(8000 / 60)) * 100
    expect(Math.abs(darkestRow(rows) + 0.5 - expected)).toBeLessThanOrEqual(binInRows + 1)
  })

  it('keeps a tone that is thinner than its row', () => {
    const rows = spectrogramRows(pictureOf(5000), { ...options, rowCount: 12, rangeDbPerHz: [-80, -20] })
    expect(Math.max(...rows.shades)).toBe(255)
  })

  it('leaves what is above the highest bin at 0', () => {
    const slow = spectrogram(tone(440).subarray(0, 8000), 8000, { segmentLength: 512 })
    const rows = spectrogramRows(slow, { ...options, rangeDbPerHz: [-230, -200] })
    expect(rows.shades.slice(0, rows.columnCount * 5).every((shade) => shade === 0)).toBe(true)
  })

  it('spreads shades over at least 30 dB, and over silence too', () => {
    const silent = spectrogram(new Float32Array(4000), 8000, { segmentLength: 512 })
    const rows = spectrogramRows(silent, options)
    expect(rows.toDbPerHz - rows.fromDbPerHz).toBeGreaterThanOrEqual(30)
    expect(rows.shades.every((shade) => shade === 0)).toBe(true)
  })

  it('lifts high tones over low ones by the tilt', () => {
    const noise = spectrogram(
      tone(250).map((x, n) => x + 0.5 * Math.sin((2 * Math.PI * 2000 * n) / RATE_HZ)),
      RATE_HZ,
      {
        segmentLength: 1024,
      },
    )
    const shadeAt = (tiltDbPerOctave: number, hz: number) => {
      const rows = spectrogramRows(noise, { ...options, rangeDbPerHz: [-100, 100], tiltDbPerOctave })
      const row = Math.floor((Math.log(8000 / hz) / Math.log(8000 / 60)) * 100)
      return rows.shades[row * rows.columnCount + 3]!
    }
    const shadesPerDb = 255 / 200
    const changeOf = (hz: number) => (shadeAt(6, hz) - shadeAt(0, hz)) / shadesPerDb
    close(changeOf(250), -12, { abs: 1.2, because: 'two octaves below 1 kHz, in whole shades and bins' })
    close(changeOf(2000), 6, { abs: 1.2, because: 'one octave above' })
  })

  it('has no columns for a clip that is too short', () => {
    const none = spectrogram(new Float32Array(10), 8000, { segmentLength: 512 })
    expect(spectrogramRows(none, options)).toMatchObject({ columnCount: 0, rowCount: 100 })
  })

  it('refuses limits that do not rise', () => {
    expect(() => spectrogramRows(pictureOf(500), { ...options, highHz: 50 })).toThrow(InputError)
  })
})
