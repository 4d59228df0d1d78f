import { InputError } from '../base/errors'
import type { PipeSize } from './pipeSizes'
import type { PipeWall } from './pipeWalls'
import { WATER_BULK_MODULUS_PA } from './waterProperties'

/** A run of pipe full of water. */
export interface FilledLine {
  readonly size: PipeSize
  readonly wall: PipeWall
  readonly lengthM: number
}

/**
 * Volume of a run of pipe, m³.
 *
 * @throws {InputError} a length that is not above 0.
 */
export function lineVolumeM3({ size, lengthM }: FilledLine): number {
  if (!(lengthM > 0)) throw new InputError(`lengthM is ${lengthM}; must be > 0`)
  return (Math.PI / 4) * size.insideDiameterM ** 2 * lengthM
}

/**
 * How far water and wall give to pressure, per volume.
 *
 *     1/K + D/(E·e)
 *
 * The same sum stands in the speed of a pressure wave, c = 1/√(ρ·(1/K + D/(E·e))), which is how it is checked.
 *
 * @returns 1/Pa.
 * @see Moser 2001, on surge in flexible pipe. [Moser2001] in shared/base/sources.ts
 */
export function givePerPa({ size, wall }: Pick<FilledLine, 'size' | 'wall'>): number {
  return 1 / WATER_BULK_MODULUS_PA + size.insideDiameterM / (wall.modulusPa * size.wallM)
}

/**
 * Volume that a line without air takes or gives for each pascal.
 *
 * @returns m³/Pa. 100 ft of 1-1/2 in Schedule 40: about 1.2 mL for one psi.
 * @throws {InputError} a length that is not above 0.
 */
export function lineComplianceM3PerPa(line: FilledLine): number {
  return lineVolumeM3(line) * givePerPa(line)
}
