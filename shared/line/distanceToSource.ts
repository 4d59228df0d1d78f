import type { LinePath } from './linePath'
import { placeAlong } from './placeAlong'

/** Where the leak is thought to be and where the microphone stood, m. */
export interface SourceAndListener {
  /** Of the source along the line. */
  readonly sourceAlongM: number
  /** Of the source below the ground, ≥ 0. */
  readonly depthM: number
  /** Of the microphone along the line, and off it (positive to the left looking from start to end). */
  readonly listenAlongM: number
  readonly offsetM: number
}

/**
 * Straight distance through the ground from a source on the pipe to a microphone on the surface.
 *
 *     r = √(across² + depth²),   across measured on the sketch, over bends and offsets
 *
 * @returns m, ≥ depthM.
 */
export function distanceToSource(path: LinePath, { depthM, ...places }: SourceAndListener): number {
  return Math.hypot(acrossToSource(path, places), depthM)
}

/** The same over the ground only: from the spot above the source to the microphone, m. */
export function acrossToSource(path: LinePath, places: Omit<SourceAndListener, 'depthM'>): number {
  const source = placeAlong(path, places.sourceAlongM)
  const listener = placeAlong(path, places.listenAlongM, places.offsetM)
  return Math.hypot(source.xM - listener.xM, source.yM - listener.yM)
}
