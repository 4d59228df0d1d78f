import { describe, expect, it } from 'vitest'
import { THIRD_OCTAVE_BANDS } from '../../../shared/spectrum/thirdOctaveBands'
import { close } from '../../support/close'

const band = (nominalHz: number) => THIRD_OCTAVE_BANDS.find((b) => b.nominalHz === nominalHz)!

describe('THIRD_OCTAVE_BANDS', () => {
  it('are 21, from 63 Hz to 6.3 kHz, in rising order', () => {
    expect(THIRD_OCTAVE_BANDS.length).toBe(21)
    const mids = THIRD_OCTAVE_BANDS.map((b) => b.midHz)
    expect(mids).toEqual(mids.toSorted((a, b) => a - b))
  })

  // IEC 61260-1:2014, base ten, as independent open filter libraries have them. [IEC61260]
  it.each([
    [63, 63.0957],
    [100, 100],
    [125, 125.8925],
    [160, 158.4893],
    [200, 199.5262],
    [250, 251.1886],
    [315, 316.2278],
    [400, 398.1072],
    [500, 501.1872],
    [630, 630.9573],
    [800, 794.3282],
    [1000, 1000],
    [1250, 1258.9254],
    [1600, 1584.8932],
    [2000, 1995.2623],
    [2500, 2511.8864],
    [3150, 3162.2777],
    [4000, 3981.0717],
    [6300, 6309.5734],
  ])('the %i Hz band has its exact mid-band frequency', (nominalHz, midHz) => {
    close(band(nominalHz).midHz, midHz, { abs: 1e-4, because: 'four decimals are given' })
  })

  it('the 1 kHz band reaches from 891.2509 to 1122.0185 Hz (base two would give 890.90 and 1122.46)', () => {
    close(band(1000).lowerHz, 891.2509, { abs: 1e-4, because: 'IEC 61260-1:2014' })
    close(band(1000).upperHz, 1122.0185, { abs: 1e-4, because: 'IEC 61260-1:2014' })
  })

  it('three bands about 250 Hz make the octave from 177.8279 to 354.8134 Hz', () => {
    close(band(200).lowerHz, 177.8279, { abs: 1e-4, because: 'IEC 61260-1:2014' })
    close(band(315).upperHz, 354.8134, { abs: 1e-4, because: 'IEC 61260-1:2014' })
  })

  it('touch, and are each 0.230768 of their mid-band frequency wide', () => {
    THIRD_OCTAVE_BANDS.forEach((b, i) => {
      close((b.upperHz - b.lowerHz) / b.midHz, 0.230768, { abs: 1e-6, because: 'G^(1/6) − G^(−1/6)' })
      if (i > 0) close(b.lowerHz, THIRD_OCTAVE_BANDS[i - 1]!.upperHz, { rel: 1e-12, because: 'a shared edge' })
    })
  })

  it('are called by preferred numbers within 1 % of their exact mid-band frequency', () => {
    for (const b of THIRD_OCTAVE_BANDS)
      close(b.nominalHz, b.midHz, { rel: 0.01, because: 'preferred numbers are rounded' })
  })
})
