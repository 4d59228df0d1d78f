import { describe, expect, it } from 'vitest'
import { bubbleDecayPerS } from '../../../shared/bubbles/bubbleDecay'
import { minnaertRadiusM } from '../../../shared/bubbles/minnaert'
import { fourier } from '../../../shared/synth/fourier'
import { CELL_WIDTH_HZ, cellEdgeHz, GRID_COUNT } from '../../../shared/synth/grid'
import { addRings } from '../../../shared/synth/renderClip'
import { bubbleEnergyAt, energyToPsd, pitchStep, ringEnergy } from '../../../shared/synth/ringEnergy'
import { close } from '../../support/close'

describe('the energy of a ring', () => {
  it('adds up to A²/(4·d)', () => {
    const energy = ringEnergy({ amplitude: 2, pitchHz: 900, decayPerS: 80 })
    close(
      energy.reduce((a, b) => a + b),
      4 / (4 * 80),
      { rel: 0.01, because: 'closed form for d small against the pitch; the grid ends at 16.8 kHz' },
    )
  })

  it('is spread over frequency as the transform of the rendered ring says, flanks and all', () => {
    const pitchHz = 640
    const decayPerS = bubbleDecayPerS(minnaertRadiusM(pitchHz))
    const rate = 65536
    const re = new Float64Array(rate)
    addRings(
      re,
      {
        timeS: Float64Array.of(0),
        pitchHz: Float64Array.of(pitchHz),
        amplitude: Float64Array.of(1),
        decayPerS: Float64Array.of(decayPerS),
        risePerS: Float64Array.of(0),
      },
      rate,
    )
    const im = new Float64Array(rate)
    fourier(re, im, -1)
    const energy = ringEnergy({ amplitude: 1, pitchHz, decayPerS })
    for (let g = 20; g < GRID_COUNT - 20; g += 4) {
      let sum = 0
      let bins = 0
      for (let k = Math.ceil(cellEdgeHz(g)); k < cellEdgeHz(g + 1); k++) {
        sum += (2 * (re[k]! ** 2 + im[k]! ** 2)) / rate / rate
        bins++
      }
      if (bins < 8) continue
      const perHz = sum / bins
      close(energy[g]! / CELL_WIDTH_HZ[g]! / perHz, 1, { abs: 0.12, because: 'bins of 1 Hz against a cell as a whole' })
    }
  })

  it('has a table of bubbles no coarser than 1/24 octave', () => {
    const step = pitchStep(1000)
    expect(bubbleEnergyAt(step)).toBe(bubbleEnergyAt(step))
    expect(pitchStep(1000 * 2 ** (1 / 24))).toBe(step + 1)
    expect(pitchStep(1)).toBe(0)
  })

  it('times a rate is power per hertz', () => {
    const psd = energyToPsd(bubbleEnergyAt(pitchStep(500)), 10)
    const power = psd.reduce((sum, p, g) => sum + p * CELL_WIDTH_HZ[g]!, 0)
    const decay = bubbleDecayPerS(minnaertRadiusM(500))
    close(power, 10 / (4 * decay), { rel: 0.03, because: 'ten rings a second of A²/(4d); pitch to 1/48 octave' })
  })
})
