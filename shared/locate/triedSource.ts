import type { Geometry } from '../ground/transfer'

/** A source at a place that is tried: the leak (unknown), or the air inlet or a told noise (known). */
export interface TriedSource {
  readonly kind: 'leak' | 'inlet' | 'noise'
  /** To each setting-down, in the model's order. */
  readonly geometry: readonly Geometry[]
  /** Of a leak: whether air on its way from the inlet passes below each setting-down. */
  readonly passedBy?: readonly boolean[]
}
