import type { Line } from '../line/line'
import type { FitModel } from './fitModel'
import { geometryFrom } from './scanLine'
import type { TriedSource } from './triedSource'

/** Air is let in, and machines stand, at or near the surface, m. Chosen. */
export const SURFACE_DEPTH_M = 0.15

/** Sources that a line tells of, in the order in which a fit has them: the air inlet, then its noises. */
export function knownSources(line: Line, model: FitModel): TriedSource[] {
  const atSurface = (kind: 'inlet' | 'noise', atM: number): TriedSource => ({
    kind,
    geometry: geometryFrom(line, atM, model, SURFACE_DEPTH_M),
  })
  return [
    ...(line.airInletM === null ? [] : [atSurface('inlet', line.airInletM)]),
    ...line.noises.map((noise) => atSurface('noise', noise.atM)),
  ]
}
