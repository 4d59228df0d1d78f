import { describe, expect, it } from 'vitest'
import { linePath } from '../../../shared/line/linePath'
import { GRID_HZ, nearestCell } from '../../../shared/synth/grid'
import type { Ground } from '../../../shared/synth/ground'
import { alongPipePower, pipeLoss } from '../../../shared/synth/pipePath'
import { close } from '../../support/close'

const GROUND: Ground = {
  route: linePath({
    vertices: [
      { xM: 0, yM: 0 },
      { xM: 40, yM: 0 },
    ],
  }),
  stretches: [
    {
      fromM: 0,
      toM: 40,
      cover: 'grass',
      depthM: 0.5,
      medium: { absorptionDbPerCmKhz: 0.3, speedMPerS: 150, obliquity: 0.5, surfaceShare: 0, coherence: 0 },
      coverLossDbPerKhz: 0,
      plate: null,
    },
  ],
  pipe: { lossDbPerM: 0, lossDbPerMKhz: 3.084, fittings: [] },
}

describe('the pipe path', () => {
  it('loses 3.08 dB/m at 1 kHz from the wall of 1.5 in PVC alone', () => {
    // Lossy Korteweg form with loss factor 0.06: 3.084 dB/m at 1 kHz, linear in frequency. [PinningtonBriscoe1994]
    const loss = pipeLoss(GROUND.pipe, 2, 5)
    close(loss.db + loss.dbPerKhz, 9.252, { abs: 1e-9, because: '3 m at 1 kHz' })
  })

  it('falls at the surface as the wave in the pipe does, the same decibels every metre on both sides', () => {
    // What theory finds right above a leaking pipe. [Muggleton2023]
    const cell = nearestCell(500)
    const level = (alongM: number) =>
      10 * Math.log10(alongPipePower(GROUND, { alongM: 20, offsetM: 0 }, { alongM, offsetM: 0 })[cell]!)
    const perMetre = (3.084 * GRID_HZ[cell]!) / 1000
    for (const alongM of [25, 27, 29])
      close(level(alongM) - level(alongM + 2), 2 * perMetre, { abs: 0.05, because: 'far from the source' })
    close(level(15), level(25), { abs: 1e-9, because: 'symmetry' })
  })

  it('is heard more above a fitting', () => {
    const withFitting = {
      ...GROUND,
      pipe: { ...GROUND.pipe, fittings: [{ atM: 24, radiatesLikeM: 1, lossDb: 0 }] },
    }
    const at = (ground: Ground) =>
      alongPipePower(ground, { alongM: 20, offsetM: 0 }, { alongM: 24, offsetM: 0 })[nearestCell(500)]!
    expect(at(withFitting)).toBeGreaterThan(1.5 * at(GROUND))
  })

  it('is cut at a fitting that takes some of it', () => {
    const pipe = { ...GROUND.pipe, fittings: [{ atM: 24, radiatesLikeM: 1, lossDb: 2 }] }
    expect(pipeLoss(pipe, 20, 25).db).toBe(2)
    expect(pipeLoss(pipe, 20, 23).db).toBe(0)
  })
})
