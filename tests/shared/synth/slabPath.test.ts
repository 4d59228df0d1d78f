import { describe, expect, it } from 'vitest'
import { soilPower } from '../../../shared/synth/groundPath'
import { bendingSpeedMPerS, plateResponse, sidewaysPower, slabPower } from '../../../shared/synth/slabPath'
import { close } from '../../support/close'

const PLATE = { thicknessM: 0.1, lossFactor: 0.1, sidewaysDb: -6, resonanceHz: 140, resonanceQuality: 3 }
const SOIL = { absorptionDbPerCmKhz: 0.4, speedMPerS: 150, obliquity: 0.5, surfaceShare: 0.2, coherence: 0.3 }

describe('a slab', () => {
  it('carries bending waves at 782 m/s, 0.10 m thick at 1 kHz', () => {
    // √(1.8·c·h·f) with c = 3400 m/s. [CremerHeckl]
    close(bendingSpeedMPerS(0.1, 1000), 782.3, { abs: 0.1, because: 'closed form' })
  })

  it('bends as fast as sound in air at 192 Hz', () => {
    // Coincidence: c0²/(1.8·c·h) with c0 = 343.2 m/s. [CremerHeckl]
    close(bendingSpeedMPerS(0.1, 192.46), 343.2, { abs: 0.1, because: 'critical frequency of 0.10 m concrete' })
  })

  it('spreads sideways as the root of distance', () => {
    const lossless = { ...PLATE, lossFactor: 0 }
    const drop = 10 * Math.log10(sidewaysPower(lossless, 500, 1e-6, 4) / sidewaysPower(lossless, 500, 1e-6, 1))
    close(drop, -6.0206, { abs: 1e-3, because: 'amplitude r^−0.5: 10·log10 of 1/4' })
  })

  it('flattens the fall-off against bare soil', () => {
    const across = (x: number) => ({ depthM: 0.5, toSensorM: x, toFootM: 0, footToSensorM: x })
    const slabDrop = slabPower(PLATE, SOIL, 800, across(2)) / slabPower(PLATE, SOIL, 800, across(0))
    const soilDrop = soilPower(SOIL, 800, 0.5, 2) / soilPower(SOIL, 800, 0.5, 0)
    expect(10 * Math.log10(slabDrop / soilDrop)).toBeGreaterThan(10)
  })

  it('resonates: quality² at its resonance, 1 far below', () => {
    const { resonanceHz, resonanceQuality: q } = PLATE
    close(plateResponse(PLATE, resonanceHz), (q * q) / (1 + 1 / 64), { rel: 1e-9, because: 'closed form' })
    close(plateResponse(PLATE, resonanceHz / 100), 1, { abs: 0.01, because: 'far below' })
  })
})
