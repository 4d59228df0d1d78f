import { GRID_COUNT, GRID_HZ } from './grid'
import { type Ground, groundPower, type Pipe, type Spot, stretchAt } from './ground'

/**
 * Power carried along the pipe from one place to another, 1 at the source: loss by length and frequency, and what
 * every fitting between takes.
 */
export function pipePower(pipe: Pipe, frequencyHz: number, fromM: number, toM: number): number {
  let lossDb = Math.abs(toM - fromM) * (pipe.lossDbPerM + (pipe.lossDbPerMKhz * frequencyHz) / 1000)
  for (const fitting of pipe.fittings)
    if (fitting.atM > Math.min(fromM, toM) && fitting.atM < Math.max(fromM, toM)) lossDb += fitting.lossDb
  return 10 ** (-lossDb / 10)
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
    const up = groundPower(ground, { alongM: piece.alongM, offsetM: 0, depthM }, sensor)
    for (let g = 0; g < GRID_COUNT; g++)
      power[g]! += up[g]! * piece.lengthM * pipePower(ground.pipe, GRID_HZ[g]!, source.alongM, piece.alongM)
  }
  return power
}

/** Pieces of pipe that matter at a sensor: near ones short, to six depths each way, and the fittings there. */
function pieces(ground: Ground, sensor: Spot): { alongM: number; lengthM: number }[] {
  const depthM = stretchAt(ground, sensor.alongM).depthM
  const reachM = 6 * depthM
  const list: { alongM: number; lengthM: number }[] = []
  for (const [from, to, step] of [
    [0, 1.5, 0.5],
    [1.5, 6, 1.5],
  ] as const)
    for (let s = from; s < to - 1e-9; s += step)
      for (const side of [-1, 1])
        list.push({ alongM: sensor.alongM + side * (s + step / 2) * depthM, lengthM: step * depthM })
  for (const fitting of ground.pipe.fittings)
    if (Math.abs(fitting.atM - sensor.alongM) < reachM)
      list.push({ alongM: fitting.atM, lengthM: fitting.radiatesLikeM })
  return list
}
