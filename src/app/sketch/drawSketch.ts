import type { DrawCommand } from '../../../shared/sketch/drawList'

/** The sketch at a scale; Infinity for what is to scale only. */
export type DrawSketch = (pxPerM: number) => readonly DrawCommand[]
