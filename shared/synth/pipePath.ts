import { dbToPower } from '../base/units'
import { GRID_COUNT, GRID_HZ } from './grid'
import { type Ground, groundPower, type Pipe, type Spot, stretchAt } from './ground'

/**
 * What is lost along the pipe from one place to another: by length, by length and frequency, and at every fitting
 * between.
 *
 * @returns dB whatever the frequency, and dB for each kHz.
 */
export function pipeLoss(pipe: Pipe, fromM: number, toM: number): { db: number; dbPerKhz: number } {
  const lengthM = Math.abs(toM - fromM)
  let db = lengthM * pipe.lossDbPerM
  for (const fitting of pipe.fittings)
    if (fitting.atM > Math.min(fromM, toM) && fitting.atM < Math.max(fromM, toM)) db += fitting.lossDb
  return { db, dbPerKhz: lengthM * pipe.lossDbPerMKhz }
}

/**
 * Power at the microphone of what travels along the pipe and leaves it on the way: every short piece of pipe, and
 * every fitting, is a small source in the ground. Directly above the pipe this follows the wave in the pipe, as found
 * for ground vibration over leaking pipes (Muggleton et al. 2023). [Muggleton2023]
 *
 * @param source Where the sound enters the pipe. @param sensor The microphone.
 * @returns On the grid, for a pipe that sends out 1 a metre at the source.
 */
export function alongPipePower(ground: Ground, source: Spot, sensor: Spot): Float64Array {
  const power = new Float64Array(GRID_COUNT)
  for (const piece of pieces(ground, sensor)) {
    const depthM = stretchAt(ground, piece.alongM).depthM
    const up = groundPower(ground, { alongM: piece.alongM, offsetM: 0, depthM }, sensor, 3)
    const loss = pipeLoss(ground.pipe, source.alongM, piece.alongM)
    for (let g = 1; g < GRID_COUNT; g += 3)
      power[g]! += up[g]! * piece.lengthM * dbToPower(-loss.db - (loss.dbPerKhz * GRID_HZ[g]!) / 1000)
  }
  fillBetweenBands(power)
  return power
}

/** The path is smooth over frequency, so that it is worked out at mid-bands only and the cells between follow. */
function fillBetweenBands(power: Float64Array): void {
  for (let g = 0; g < GRID_COUNT; g++) {
    if (g % 3 === 1) continue
    const below = g % 3 === 2 ? g - 1 : Math.max(1, g - 2)
    const above = Math.min(below + 3, GRID_COUNT - 2)
    const share = above === below ? 0 : (g - below) / (above - below)
    power[g] = power[below]! ** (1 - share) * power[above]! ** share
  }
}

/** Pieces of pipe that matter at a sensor: near ones short, to six depths each way, and the fittings there. */
function pieces(ground: Ground, sensor: Spot): { alongM: number; lengthM: number }[] {
  const depthM = stretchAt(ground, sensor.alongM).depthM
  const reachM = 6 * depthM
  const list: { alongM: number; lengthM: number }[] = []
  for (const [from, to, step] of [
    [0, 2, 0.5],
    [2, 6, 1],
  ] as const)
    for (let s = from; s < to - 1e-9; s += step)
      for (const side of [-1, 1])
        list.push({ alongM: sensor.alongM + side * (s + step / 2) * depthM, lengthM: step * depthM })
  for (const fitting of ground.pipe.fittings)
    if (Math.abs(fitting.atM - sensor.alongM) < reachM)
      list.push({ alongM: fitting.atM, lengthM: fitting.radiatesLikeM })
  return list
}
