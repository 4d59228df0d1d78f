/** The most that a quiet clip is lifted to the loudness of another, dB: further up there is only hiss. */
export const MOST_LIFT_DB = 12

/**
 * By how much a clip is lifted so that it is as loud as the loudest of those it is compared with.
 *
 * Nothing is ever lowered: the loudest stays as it is.
 *
 * @param levelDb  Level of the clip, dBFS; `null` when it has none.
 * @param othersDb Levels of the others, dBFS; those without one are left out.
 * @returns dB, 0 to `MOST_LIFT_DB`.
 */
export function matchLiftDb(levelDb: number | null, othersDb: readonly (number | null)[]): number {
  if (levelDb === null) return 0
  const loudestDb = othersDb.reduce<number>((most, each) => Math.max(most, each ?? levelDb), levelDb)
  return Math.min(MOST_LIFT_DB, loudestDb - levelDb)
}
