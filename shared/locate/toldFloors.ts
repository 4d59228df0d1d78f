import { median, quantile } from '../base/statistics'
import type { BandRow, SettingDown } from './settingDown'

/** Repeatability of a floor is held to this, dB. Chosen: a finite clip of noise; gusts. */
const SD_DB = { least: 0.25, most: 6 }
/** Taken when there are too few pairs to learn from. Chosen. */
const UNKNOWN_SD_DB = 2
/** The air-on levels nearest to the told floor may be near by luck: at least this share of what the scatter predicts. Chosen. */
const LEAST_OF_EXPECTED = 0.3
/** Fewest pairs in a band and its neighbours from which it is learnt. */
const FEWEST_PAIRS = 12
/** Below this share of the points little but floor is heard, in nearly every sweep; |z| of a normal there. */
const QUIET = { share: 0.4, z: 0.5244 }

/**
 * What the air-off clips tell of the floor in the air-on clips of the same settings-down.
 *
 * A floor differs from place to place (a pump near by) and from minute to minute (gusts). How much of each there is in a
 * band is learnt from the sweep: `t` from air-on against air-off at one place where they differ least, `s` from air-off
 * levels of different places. The floor expected under an air-on clip is then drawn from the air-off clip's level toward
 * the middle of all of them, the more the more of the spread is of time:
 *
 *     floor = m + ρ·(off − m),   ρ = s²/(s² + t²)
 *
 * which is the regression of one of two equally scattered readings on the other. How well it tells them is read from the
 * air-on levels that are nearest to it.
 */
export function toldFloors(
  settings: readonly SettingDown[],
  bandCount: number,
): { toldFloorDb: (BandRow | null)[]; toldSdDb: Float64Array } {
  const middle = Float64Array.from({ length: bandCount }, (_, b) => {
    const [off, on] = [levels(settings, b, 'off'), levels(settings, b, 'on')]
    // A leak can only raise the air-on levels, a gust either: the lower middle is nearer to the floor of both.
    return off.length === 0 ? 0 : on.length === 0 ? median(off) : Math.min(median(off), median(on))
  })
  const learnt = Array.from({ length: bandCount }, (_, b) => learn(settings, b, middle))
  return {
    toldSdDb: Float64Array.from(learnt, ({ sdDb }) => sdDb),
    toldFloorDb: settings.map(({ off }) => {
      if (off === null) return null
      const levelDb = off.levelDb.map((level, b) => middle[b]! + learnt[b]!.share * (level - middle[b]!))
      return { levelDb, weight: off.weight }
    }),
  }
}

function learn(settings: readonly SettingDown[], band: number, middle: Float64Array): { share: number; sdDb: number } {
  const near = [band - 1, band, band + 1].filter((b) => b >= 0 && b < middle.length)
  const inTime = near.flatMap((b) => differences(settings, b))
  const overall = near.flatMap((b) => levels(settings, b, 'off').map((level) => Math.abs(level - middle[b]!)))
  if (inTime.length < FEWEST_PAIRS) return { share: 1, sdDb: UNKNOWN_SD_DB }
  const within = quietSpread(inTime) ** 2 / 2
  const total = Math.max(quietSpread(overall) ** 2, within)
  const share = 1 - within / total
  const missed = near.flatMap((b) => misses(settings, b, middle[b]!, share))
  const expected = Math.sqrt(total * (1 - share * share))
  return { share, sdDb: Math.min(SD_DB.most, Math.max(quietSpread(missed), LEAST_OF_EXPECTED * expected)) }
}

function quietSpread(absolute: readonly number[]): number {
  return Math.max(SD_DB.least, quantile(absolute, QUIET.share) / QUIET.z)
}

/** How far the floor so told is from the air-on levels. */
function misses(settings: readonly SettingDown[], band: number, middleDb: number, share: number): number[] {
  return settings.flatMap(({ on, off }) =>
    on && off && on.weight[band]! > 0 && off.weight[band]! > 0
      ? [Math.abs(on.levelDb[band]! - middleDb - share * (off.levelDb[band]! - middleDb))]
      : [],
  )
}

function differences(settings: readonly SettingDown[], band: number): number[] {
  return settings.flatMap(({ on, off }) =>
    on && off && on.weight[band]! > 0 && off.weight[band]! > 0
      ? [Math.abs(on.levelDb[band]! - off.levelDb[band]!)]
      : [],
  )
}

function levels(settings: readonly SettingDown[], band: number, air: 'on' | 'off'): number[] {
  return settings.flatMap((setting) => {
    const row = setting[air]
    return row && row.weight[band]! > 0 ? [row.levelDb[band]!] : []
  })
}
