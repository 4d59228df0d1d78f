/** One answer on the stairs. */
export interface StairTrial {
  readonly levelDb: number
  readonly right: boolean
}

/** Where the stairs stand. Plain data, never changed in place. */
export interface Staircase {
  /** Of the next clip: signal over noise, dB. */
  readonly levelDb: number
  /** Right answers since the last step. */
  readonly rightInARow: number
  readonly direction: 'down' | 'up' | null
  /** Levels at which the direction turned. */
  readonly turnsDb: readonly number[]
}

/** Chosen: easy for anybody; large steps until it has turned twice, then small ones; what can still be mixed. */
export const STAIRS = {
  firstDb: 18,
  largeStepDb: 4,
  smallStepDb: 2,
  largeTurns: 2,
  lowestDb: -12,
  highestDb: 30,
} as const

/** So often right where these stairs settle: a step down needs two right answers in a row, so p² = ½. [Levitt1971] */
export const STAIRS_SHARE = Math.SQRT1_2

export const FIRST_STAIRS: Staircase = { levelDb: STAIRS.firstDb, rightInARow: 0, direction: null, turnsDb: [] }

/**
 * The stairs after one more answer: two right ones in a row make it harder by a step, a wrong one easier.
 *
 * @see Levitt 1971, transformed up-down methods: 2-down 1-up settles where 70.7 % are right. [Levitt1971]
 */
export function stepStairs(stairs: Staircase, right: boolean): Staircase {
  if (right && stairs.rightInARow === 0) return { ...stairs, rightInARow: 1 }
  const direction = right ? 'down' : 'up'
  const isTurn = stairs.direction !== null && stairs.direction !== direction
  const turnsDb = isTurn ? [...stairs.turnsDb, stairs.levelDb] : stairs.turnsDb
  const stepDb = turnsDb.length < STAIRS.largeTurns ? STAIRS.largeStepDb : STAIRS.smallStepDb
  const movedDb = stairs.levelDb + (right ? -stepDb : stepDb)
  const levelDb = Math.min(STAIRS.highestDb, Math.max(STAIRS.lowestDb, movedDb))
  return { levelDb, rightInARow: 0, direction, turnsDb }
}

/** The stairs after a row of answers. */
export function stairsAfter(trials: readonly Pick<StairTrial, 'right'>[]): Staircase {
  return trials.reduce((stairs, { right }) => stepStairs(stairs, right), FIRST_STAIRS)
}
