import { bubbleDecayPerS } from '../bubbles/bubbleDecay'
import { minnaertRadiusM } from '../bubbles/minnaert'
import { CELL_WIDTH_HZ, cellEdgeHz, GRID_COUNT, GRID_HZ } from './grid'

/**
 * Energy of one ring in each cell of the grid.
 *
 *     ring(t) = A·sin(ω₀·t)·e^(−d·t), t ≥ 0
 *     energy per hertz = 2·|S|² = 2·A²·ω₀² / ((d² + (ω − ω₀)²)·(d² + (ω + ω₀)²))
 *
 * Near the pitch the line is narrower than a cell, so the first factor is integrated in closed form and the second
 * taken at the cell's middle. The total is A²/(4·d) when d is small against ω₀.
 *
 * @param ring Amplitude A, pitch in Hz, decay d in 1/s. @returns Energy (power times seconds) per cell.
 */
export function ringEnergy(ring: { amplitude: number; pitchHz: number; decayPerS: number }): Float64Array {
  const { amplitude, pitchHz, decayPerS: d } = ring
  const w0 = 2 * Math.PI * pitchHz
  const energy = new Float64Array(GRID_COUNT)
  let below = Math.atan((2 * Math.PI * cellEdgeHz(0) - w0) / d)
  for (let g = 0; g < GRID_COUNT; g++) {
    const above = Math.atan((2 * Math.PI * cellEdgeHz(g + 1) - w0) / d)
    const sum = 2 * Math.PI * GRID_HZ[g]! + w0
    energy[g] = ((amplitude * amplitude * w0 * w0) / (Math.PI * d * (d * d + sum * sum))) * (above - below)
    below = above
  }
  return energy
}

/** Steps of the table of bubbles: 1/24 octave from 80 Hz to 10 kHz. */
const STEPS_PER_OCTAVE = 24
const LOWEST_PITCH_HZ = 80
const PITCH_STEPS = Math.ceil(STEPS_PER_OCTAVE * Math.log2(10_000 / LOWEST_PITCH_HZ))

/** Nearest step of the table to a pitch. */
export function pitchStep(pitchHz: number): number {
  const step = Math.round(STEPS_PER_OCTAVE * Math.log2(pitchHz / LOWEST_PITCH_HZ))
  return Math.min(Math.max(step, 0), PITCH_STEPS - 1)
}

const table: (Float64Array | undefined)[] = new Array(PITCH_STEPS)

/** Energy per cell of a bubble of amplitude 1 whose pitch is at a step of the table. */
export function bubbleEnergyAt(step: number): Float64Array {
  let energy = table[step]
  if (energy === undefined) {
    const pitchHz = LOWEST_PITCH_HZ * 2 ** (step / STEPS_PER_OCTAVE)
    energy = ringEnergy({ amplitude: 1, pitchHz, decayPerS: bubbleDecayPerS(minnaertRadiusM(pitchHz)) })
    table[step] = energy
  }
  return energy
}

/** Power per hertz of energy per cell that comes so many times a second. */
export function energyToPsd(energy: Float64Array, timesPerS: number): Float64Array {
  return energy.map((e, g) => (e * timesPerS) / CELL_WIDTH_HZ[g]!)
}
