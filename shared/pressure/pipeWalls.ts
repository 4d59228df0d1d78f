import type { PipeMaterial } from '../line/line'

/** How a pipe's wall gives to pressure and to warmth. */
export interface PipeWall {
  /** Young's modulus, Pa. */
  readonly modulusPa: number
  /** Linear expansion, 1/K. */
  readonly expansionPerK: number
}

/**
 * Moduli and expansions at 20 °C.
 *
 * PVC: least modulus of cell class 12454, 400 000 psi, and a pipe maker's 5.2e-5 per K. The others are handbook values
 * from memory. `other` is reckoned as PVC. [Moser2001] in shared/base/sources.ts
 */
export const PIPE_WALLS: Readonly<Record<PipeMaterial, PipeWall>> = {
  pvc: { modulusPa: 2.757903e9, expansionPerK: 5.2e-5 },
  pe: { modulusPa: 0.8e9, expansionPerK: 1.8e-4 },
  abs: { modulusPa: 2.2e9, expansionPerK: 9e-5 },
  copper: { modulusPa: 117e9, expansionPerK: 1.7e-5 },
  other: { modulusPa: 2.757903e9, expansionPerK: 5.2e-5 },
}
