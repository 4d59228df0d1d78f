import { describe, expect, it } from 'vitest'
import { DB_PER_NEPER } from '../../../shared/base/units'
import {
  absorbedAmplitude,
  bodyAmplitude,
  type Medium,
  soilPower,
  surfaceAmplitude,
} from '../../../shared/synth/groundPath'
import { close } from '../../support/close'

const LOSSLESS: Medium = {
  absorptionDbPerCmKhz: 0,
  speedMPerS: 150,
  obliquity: 0,
  surfaceShare: 0,
  coherence: 0,
}
const db = (ratio: number) => 20 * Math.log10(ratio)

/** Absorption in nepers per metre at 1 kHz as dB per cm and kHz. */
const fromNepers = (alphaPerM: number) => (alphaPerM * DB_PER_NEPER) / 100

describe('absorption', () => {
  it('takes 4.8 to 38.4 dB at 1 kHz through 40 cm over the range measured in topsoils', () => {
    // Oelze, O'Brien & Darmody 2002: 0.12 to 0.96 dB per cm and kHz. [OelzeOBrienDarmody2002]
    close(db(absorbedAmplitude(0.12, 1000, 0.4)), -4.8, { abs: 1e-9, because: '0.12 · 40 cm · 1 kHz' })
    close(db(absorbedAmplitude(0.96, 1000, 0.4)), -38.4, { abs: 1e-9, because: '0.96 · 40 cm · 1 kHz' })
    close(db(absorbedAmplitude(0.96, 3000, 0.4)), -115.2, { abs: 1e-9, because: 'three times as much at 3 kHz' })
  })
})

describe('the body wave', () => {
  it('falls by 20 dB a decade of distance far from the source', () => {
    const drop = db(bodyAmplitude(LOSSLESS, 4000, 0.001, 30) / bodyAmplitude(LOSSLESS, 4000, 0.001, 3))
    close(drop, -20, { abs: 0.001, because: '1/r; the near field adds (1/kr)²/2 at kr = 500' })
  })

  it('falls by 12.04 dB from 1 to 2 m when only its vertical part is felt (body wave along a free surface, n = 2)', () => {
    // Bornitz's law with n = 2, alpha = 0. [RichartHallWoods1970]
    const medium = { ...LOSSLESS, obliquity: 1 }
    const drop = db(bodyAmplitude(medium, 4000, 1e-4, 2) / bodyAmplitude(medium, 4000, 1e-4, 1))
    close(drop, -12.0412, { abs: 1e-3, because: '40·log10 2' })
  })

  it('falls by 6.889 dB from 1 to 2 m with 0.1 nepers a metre (n = 1)', () => {
    const medium = { ...LOSSLESS, absorptionDbPerCmKhz: fromNepers(0.1) }
    // Absorption goes with frequency: at 1 kHz it is 0.1 Np/m; 1 kHz is 84 radians from a 2 m source, so near field counts.
    const near = (r: number) => Math.sqrt(1 + 1 / ((2 * Math.PI * 1000 * r) / 150) ** 2)
    const drop = db((bodyAmplitude(medium, 1000, 1e-6, 2) * near(1)) / (bodyAmplitude(medium, 1000, 1e-6, 1) * near(2)))
    close(drop, -6.8892, { abs: 1e-3, because: 'Bornitz, n = 1, alpha = 0.1, 1 to 2 m' })
  })

  it('rises above 1/r within a wavelength or so, as round any pulsating sphere', () => {
    const k = (2 * Math.PI * 200) / 150
    const amplitude = bodyAmplitude(LOSSLESS, 200, 0.1, 0)
    close(amplitude, Math.sqrt(1 + 1 / (k * 0.1) ** 2) / 0.1, { rel: 1e-12, because: 'closed form' })
  })
})

describe('the surface wave', () => {
  it('falls by 3.879 dB from 1 to 2 m with 0.1 nepers a metre (n = 0.5)', () => {
    const medium = { ...LOSSLESS, surfaceShare: 1, absorptionDbPerCmKhz: fromNepers(0.1) }
    const drop = db(surfaceAmplitude(medium, 1000, 1e-5, 2) / surfaceAmplitude(medium, 1000, 1e-5, 1))
    close(drop, -3.8789, { abs: 1e-3, because: 'Bornitz, n = 0.5, alpha = 0.1, 1 to 2 m' })
  })

  it('is not there right above the source', () => {
    expect(surfaceAmplitude({ ...LOSSLESS, surfaceShare: 1 }, 100, 0.5, 0)).toBe(0)
  })

  it('is excited the less the deeper the source', () => {
    const medium = { ...LOSSLESS, surfaceShare: 1 }
    expect(surfaceAmplitude(medium, 200, 0.6, 2)).toBeLessThan(surfaceAmplitude(medium, 200, 0.3, 2))
  })
})

describe('both waves together', () => {
  it('average to the sum of their powers over frequency', () => {
    const medium = { ...LOSSLESS, surfaceShare: 0.5, coherence: 1, speedMPerS: 250 }
    let together = 0
    let apart = 0
    for (let f = 60; f < 160; f += 0.5) {
      together += soilPower(medium, f, 0.2, 12)
      apart += bodyAmplitude(medium, f, 0.2, 12) ** 2 + surfaceAmplitude(medium, f, 0.2, 12) ** 2
    }
    close(together / apart, 1, { abs: 0.1, because: 'the cosine turns several times over the band' })
  })
})
