/** One exact base-ten one-third-octave band. */
export interface ThirdOctaveBand {
  /** Exact mid-band frequency, Hz. */
  readonly midHz: number
  readonly lowerHz: number
  readonly upperHz: number
  /** What the band is called: 63, 80, 100 … 6300, in Hz. For labels only, never for arithmetic. */
  readonly nominalHz: number
}

/** Octave ratio of the standard, 10^(3/10) = 1.99526. [IEC61260] in sources.ts */
const G = 10 ** (3 / 10)

/** Preferred numbers of the 21 bands, from memory of [ISO266]; they agree with the mid-bands within 1 %. */
const NOMINAL_HZ = [
  63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300,
]

/** Index of the lowest band in the standard's letters (63 Hz). */
const LOWEST_X = -12

/**
 * The exact one-third-octave bands from 63 Hz to 6.3 kHz.
 *
 *     fm = 1000·G^(x/3),   f1 = fm·G^(−1/6),   f2 = fm·G^(1/6),   G = 10^(3/10),   x = −12 … 8
 *
 * Neighbours share their edge exactly up to rounding; each is 0.2308 of its mid-band frequency wide.
 *
 * @see IEC 61260-1:2014. [IEC61260] in shared/base/sources.ts
 */
export const THIRD_OCTAVE_BANDS: readonly ThirdOctaveBand[] = NOMINAL_HZ.map((nominalHz, index) => {
  const midHz = 1000 * G ** ((LOWEST_X + index) / 3)
  return { midHz, lowerHz: midHz * G ** (-1 / 6), upperHz: midHz * G ** (1 / 6), nominalHz }
})
