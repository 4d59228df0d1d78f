/** One bubble heard: a short decaying tone. */
export interface Ring {
  /** Onset from the clip's start, s. */
  readonly timeS: number
  /** Pitch at the onset, Hz. */
  readonly pitchHz: number
  /** Time for the amplitude to fall to 1/e, s. */
  readonly decayS: number
  /** Share of the burst's energy near its pitch, over what was there before it; 0 to 1. */
  readonly tonality: number
  /** Peak of the band-passed envelope over the local floor, dB. */
  readonly strengthDb: number
}

/** What the rings of one clip say together. */
export interface RingSummary {
  /** Rings that passed every test, a second of listened time. */
  readonly ratePerS: number
  readonly medianPitchHz: number | null
  /** Robust spread of the pitches (1.4826 MAD), octaves. */
  readonly pitchSpreadOctaves: number | null
  readonly medianDecayS: number | null
  /** Median tonality of the rings, 0 to 1. */
  readonly tonality: number | null
  readonly medianStrengthDb: number | null
  /** Median radius by Minnaert at the assumed pressure, m. */
  readonly medianRadiusM: number | null
  /** Absolute pressure assumed for the radius, Pa. */
  readonly assumedPressurePa: number
  /** All bursts of the envelope, ring or not, a second. */
  readonly burstRatePerS: number
  /** Share of the bursts that are rings, 0 to 1. */
  readonly ringShare: number | null
  /** 1 for a clockwork train of bursts, 0 for random (Poisson) arrivals. */
  readonly regularity: number | null
  /** Rate of a slow swell of the bubbling (slugs), Hz, between 0.1 and 3; null when there is none. */
  readonly slugRateHz: number | null
}
