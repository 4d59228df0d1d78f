export const COVERS = ['grass', 'soil', 'gravel', 'pavers', 'slab', 'other'] as const
export type Cover = (typeof COVERS)[number]

export const FITTING_KINDS = ['elbow', 'tee', 'coupling', 'valve', 'end', 'other'] as const
export type FittingKind = (typeof FITTING_KINDS)[number]

export const NOISE_KINDS = ['pump', 'motor', 'traffic', 'water', 'other'] as const
export type NoiseKind = (typeof NOISE_KINDS)[number]

export const PIPE_MATERIALS = ['pvc', 'pe', 'abs', 'copper', 'other'] as const
export type PipeMaterial = (typeof PIPE_MATERIALS)[number]

/** A place on the sketch, m: x to the right, y up, from the line's start. */
export interface SketchPlace {
  readonly xM: number
  readonly yM: number
}

/**
 * What a file said beyond what this version knows, under the file's own keys; kept to be written again. A value that
 * was read as `other` stands here under its key as it was written.
 */
export interface WithUnknown {
  readonly unknown?: Readonly<Record<string, unknown>>
}

/** Something on the line: a fitting or a noise. */
export interface OnLine<Kind extends string> extends WithUnknown {
  readonly atM: number
  readonly kind: Kind
}

export interface Pipe extends WithUnknown {
  /** Nominal size in inches as the trade names it; `null` when not told. */
  readonly nominalIn: number | null
  readonly material: PipeMaterial
}

/** A part of the line with one cover and depth. */
export interface Stretch extends WithUnknown {
  readonly fromM: number
  readonly toM: number
  readonly cover: Cover
  /** `null`: the line's own depth. */
  readonly depthM: number | null
  /** Any currency; `null` when not told. */
  readonly digCostPerM: number | null
  /** Minutes it takes to open a metre; not there when not told. */
  readonly digMinPerM?: number
}

/** What was told of the line; every distance is along the line from its start, m. */
export interface Line {
  /** `null` when neither a length nor a path was told: then the points' own range counts. */
  readonly lengthM: number | null
  /** Cover over the pipe; `null` when not told (0.45 m is assumed, with a wide prior). */
  readonly depthM: number | null
  /** May be negative or past the end; `null` when not told. */
  readonly airInletM: number | null
  /** Corners of the path with the start first, already stretched to `lengthM`; `null`: straight along x. */
  readonly vertices: readonly SketchPlace[] | null
  /** How sure the route is, standard deviation across the line, m; `null` when not told. */
  readonly routeSdM: number | null
  readonly stretches: readonly Stretch[]
  readonly fittings: readonly OnLine<FittingKind>[]
  readonly noises: readonly OnLine<NoiseKind>[]
  readonly pipe: Pipe | null
  /** Keys this version does not know, kept to be written again. */
  readonly unknown: Readonly<Record<string, unknown>>
}

/** Depth assumed when none was told, m. Chosen: usual cover of small-bore lines, common practice, no source. */
export const ASSUMED_DEPTH_M = 0.45
