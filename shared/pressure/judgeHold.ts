import { ATMOSPHERE_PA } from '../base/units'
import type { FittingCheck, HoldTest } from './gaugeLog'
import { heldReadings } from './heldReadings'
import { chanceOf, type HoldFit, holdFit, mostBent, type StepFits, stepFits } from './holdFit'
import type { HoldVerdict } from './holdVerdicts'
import { KPA_PER } from './pressureUnit'
import { type ReadingProblem, readingProblems } from './readingProblems'
import { type KnownPipe, temperatureEffect } from './temperatureEffect'

/** Whose a drop is: the line's only when every plug and fitting was found tight. */
export type DropOf = 'line' | 'weeping fitting' | 'fittings not checked'

/** A key of shared/words with its values; pressures in kPa, times in s or min. */
export interface HoldReason {
  readonly key: string
  readonly values: Readonly<Record<string, number | string>>
}

/** What a hold test says. */
export interface HoldJudgement {
  readonly verdict: HoldVerdict
  /** Why, the one that decided first. */
  readonly reasons: readonly HoldReason[]
  /** `null` unless it drops or would not come up. */
  readonly dropOf: DropOf | null
  readonly problems: readonly ReadingProblem[]
  /** `null` with too few readings for a line. */
  readonly fit: HoldFit | null
}

/** The judge's own figures; all in steps of the gauge, or chances. Set on the bench's own seeds; see its header. */
export const JUDGE = {
  leastReadings: 6,
  /** It holds when a fall, a rise or a bend of this much is ruled out; no drop beyond the gauge's resolution is asked. */
  fallSteps: 1,
  holdsFallChance: 0.02,
  holdsRiseChance: 0.05,
  bendSteps: 1,
  holdsBendChance: 0.05,
  /** It drops when a fall of less than this is ruled out. */
  sureFallSteps: 0.5,
  dropsChance: 0.005,
  /** A bend is seen when it is this sure to be more than so many steps. */
  seenBendSteps: 0.25,
  seenBendChance: 0.9,
  /** A bend of more than this share of the fall is more than a steady loss makes. */
  bendShare: 0.1,
  /** Of the pressure at the start: no warming or settling takes this much in minutes. */
  lostShare: 0.5,
} as const

/**
 * Judges a hold test.
 *
 * `holds` needs all of: the pressure that was asked for, long enough, readings enough without a long gap, no reading in doubt,
 * and a fall, a rise and a bend beyond one step of the gauge ruled out. `drops` needs a fall beyond what rounding can
 * make, that is not settling. What is neither is `cannot tell`, with the reason. What a warming or cooling line does to
 * the gauge just as a leak does, no gauge can tell; a `holds` says so.
 *
 * @param pipe Used where temperatures were told.
 * @throws {InputError} a resolution that is not above 0.
 */
export function judgeHold(test: HoldTest, pipe: KnownPipe = { size: null, wall: null }): HoldJudgement {
  const problems = readingProblems(test)
  const fits = stepFits(test)
  const seen: Seen = { test, pipe, fits, fit: fits === null ? null : holdFit(test, fits), problems }
  const { verdict, reasons } = judged(seen)
  const hasDrop = verdict === 'drops' || verdict === 'would not come up to pressure'
  const dropOf = hasDrop ? dropIs(test.fittings) : null
  return { verdict, reasons: [...reasons, ...fittingReasons(verdict, test.fittings)], dropOf, problems, fit: seen.fit }
}

interface Seen {
  readonly test: HoldTest
  readonly pipe: KnownPipe
  readonly fits: StepFits | null
  readonly fit: HoldFit | null
  readonly problems: readonly ReadingProblem[]
}

interface Judged {
  readonly verdict: HoldVerdict
  readonly reasons: readonly HoldReason[]
}

const cannotTell = (...reasons: readonly HoldReason[]): Judged => ({ verdict: 'cannot tell', reasons })

function judged(seen: Seen): Judged {
  const { test, problems, fits, fit } = seen
  const doubts = problems.filter(({ severity }) => severity === 'doubt')
  if (doubts.length > 0) {
    const { reading = 0 } = doubts[0]!.values
    return cannotTell({ key: 'hold_readings_in_doubt', values: { count: doubts.length, reading } })
  }
  if (test.cameUp === false) return wouldNotComeUp(test)
  if (fits === null || fit === null) {
    return cannotTell({
      key: 'hold_too_few',
      values: { count: heldReadings(test).length, needed: JUDGE.leastReadings },
    })
  }
  const effect = temperatureSteps(seen, fit)
  return lostMost(fit) ?? dropping(seen, fits, fit, effect) ?? holding(seen, fits, fit, effect)
}

function wouldNotComeUp({ readings, unit, rules }: HoldTest): Judged {
  const highest = readings.filter(({ leftOut }) => !leftOut).map(({ value }) => value * KPA_PER[unit])
  const asked = { asked_fine_kpa: rules.leastKpa }
  const reason =
    highest.length === 0
      ? { key: 'hold_never_came_up', values: asked }
      : { key: 'hold_came_up_to', values: { ...asked, highest_fine_kpa: Math.max(...highest) } }
  return { verdict: 'would not come up to pressure', reasons: [reason] }
}

/** Half of the pressure and more is gone: that is no rounding, no settling and no cooling. */
function lostMost(fit: HoldFit): Judged | null {
  const lost = fit.fallKpa.low / fit.startKpa
  if (!(lost > JUDGE.lostShare && fit.startKpa > 0)) return null
  return { verdict: 'drops', reasons: [fallReason('hold_drops', fit)] }
}

/** What the told temperatures can have done to the gauge over the hold, in steps; none told: nothing. */
function temperatureSteps({ test, pipe }: Seen, fit: HoldFit): { least: number; most: number; told: boolean } {
  const { startTemperatureC: startC, endTemperatureC: endC } = test
  if (startC === null || endC === null) return { least: 0, most: 0, told: false }
  const gaugePa = Math.max(1 - ATMOSPHERE_PA, 1000 * fit.startKpa)
  const { leastPa, mostPa } = temperatureEffect({ startC, endC, gaugePa }, pipe)
  const stepPa = 1000 * test.resolution * KPA_PER[test.unit]
  return { least: leastPa / stepPa, most: mostPa / stepPa, told: true }
}

type Effect = ReturnType<typeof temperatureSteps>

function dropping(seen: Seen, fits: StepFits, fit: HoldFit, effect: Effect): Judged | null {
  // What warming added to the pressure comes on top of the fall that is seen, and what cooling took, goes off it.
  const least = JUDGE.sureFallSteps - effect.least
  const isSure = (each: StepFits['straight']) => chanceOf(each, (fall) => fall < least) < JUDGE.dropsChance
  if (!isSure(fits.straight) || !isBeyondOneStep(fits, effect)) return coolingReason(fits, fit, effect)
  const bent = mostBent(fits)
  if (bent !== null && isSettling(seen, fit, bent.fit)) return cannotTell(fallReason('hold_still_settling', fit))
  return { verdict: 'drops', reasons: [fallReason('hold_drops', fit), ...temperatureNote(effect)] }
}

/** A fall that is sure but surely within one step is within what the rule allows, and may still be a slow loss. */
function isBeyondOneStep(fits: StepFits, effect: Effect): boolean {
  return chanceOf(fits.straight, (fall) => fall + effect.most > JUDGE.fallSteps) > JUDGE.holdsFallChance
}

function coolingReason(fits: StepFits, fit: HoldFit, effect: Effect): Judged | null {
  const falls = chanceOf(fits.straight, (fall) => fall < JUDGE.sureFallSteps) < JUDGE.dropsChance
  return falls && effect.least < 0 && effect.told ? cannotTell(fallReason('hold_temperature_fell', fit)) : null
}

/** A bend that is seen, and is more than a loss through a hole makes by itself as the pressure goes. */
function isSettling({ test }: Seen, fit: HoldFit, bent: StepFits['straight']): boolean {
  const stepKpa = test.resolution * KPA_PER[test.unit]
  const middleKpa = Math.max(fit.startKpa - fit.fallKpa.value / 2, stepKpa)
  const shrinking = 1 / middleKpa + 2 / (middleKpa + ATMOSPHERE_PA / 1000)
  const isMore = (fall: number, bend: number) => {
    const own = bend < 0 ? (shrinking * (fall * stepKpa) ** 2) / 8 / stepKpa : 0
    return Math.abs(bend) - own > JUDGE.seenBendSteps + JUDGE.bendShare * Math.abs(fall)
  }
  return chanceOf(bent, isMore) > JUDGE.seenBendChance
}

function holding(seen: Seen, fits: StepFits, fit: HoldFit, effect: Effect): Judged {
  const missing = notDoneAsAsked(seen, fit)
  if (missing.length > 0) return cannotTell(...missing)
  const moved = effect.told && Math.max(Math.abs(effect.least), Math.abs(effect.most)) > 0
  const fallChance = chanceOf(fits.straight, (fall) => fall + effect.most > JUDGE.fallSteps)
  const riseChance = chanceOf(fits.straight, (fall) => fall + effect.least < -JUDGE.fallSteps)
  if (fallChance > JUDGE.holdsFallChance || riseChance > JUDGE.holdsRiseChance) {
    if (moved) return cannotTell(fallReason('hold_temperature_moved', fit))
    if (isRising(fits)) return cannotTell(fallReason('hold_rises', fit))
    return cannotTell(fallReason('hold_not_clear', fit))
  }
  const bendChances = fits.bent.map(({ fit: each }) => chanceOf(each, (_, bend) => Math.abs(bend) > JUDGE.bendSteps))
  if (bendChances.length === 0 || Math.max(...bendChances) > JUDGE.holdsBendChance) {
    const bent = mostBent(fits)
    const isSeen = bent !== null && isSettling(seen, fit, bent.fit)
    return cannotTell(fallReason(isSeen ? 'hold_still_settling' : 'hold_bend_not_clear', fit))
  }
  const stays = chanceOf(fits.straight, (fall) => fall < JUDGE.sureFallSteps) < JUDGE.dropsChance
  if (stays) return cannotTell(fallReason('hold_small_fall', fit))
  return { verdict: 'holds', reasons: [fallReason('hold_holds', fit), ...temperatureNote(effect), UNSEEN] }
}

/** Said with every `holds`: it is not for the gauge to tell. */
const UNSEEN: HoldReason = { key: 'hold_unseen_cancelling', values: {} }

function isRising(fits: StepFits): boolean {
  return chanceOf(fits.straight, (fall) => fall > -JUDGE.sureFallSteps) < JUDGE.holdsFallChance
}

/** What keeps a test from being a proof, whatever the needle did. */
function notDoneAsAsked({ test }: Seen, fit: HoldFit): HoldReason[] {
  const { rules, unit, resolution } = test
  const held = heldReadings(test)
  const reasons: HoldReason[] = []
  const highestKpa = held[0]!.value * KPA_PER[unit]
  if (highestKpa < rules.leastKpa - (resolution * KPA_PER[unit]) / 2) {
    reasons.push({ key: 'hold_below_asked', values: { fine_kpa: highestKpa, asked_fine_kpa: rules.leastKpa } })
  }
  if (fit.durationS < rules.leastHoldS * SHORT_OF) {
    reasons.push({ key: 'hold_too_short', values: { held_min: fit.durationS / 60, asked_min: rules.leastHoldS / 60 } })
  }
  if (held.length < JUDGE.leastReadings) {
    reasons.push({ key: 'hold_too_few', values: { count: held.length, needed: JUDGE.leastReadings } })
  }
  const gapS = Math.max(...held.slice(1).map(({ timeS }, i) => timeS - held[i]!.timeS))
  if (gapS > fit.durationS / 2) reasons.push({ key: 'hold_gap', values: { gap_min: gapS / 60 } })
  return reasons
}

const SHORT_OF = 0.98 // the first tap comes a moment after the clock was started

function fallReason(key: string, fit: HoldFit): HoldReason {
  const { fallKpa, durationS } = fit
  const values = {
    fall_fine_kpa: fallKpa.value,
    rise_fine_kpa: -fallKpa.value,
    low_fine_kpa: fallKpa.low,
    high_fine_kpa: fallKpa.high,
    held_min: durationS / 60,
  }
  return { key, values }
}

function temperatureNote({ told }: Effect): HoldReason[] {
  return told ? [] : [{ key: 'hold_temperature_not_told', values: {} }]
}

function dropIs(fittings: readonly FittingCheck[]): DropOf {
  if (fittings.some(({ state }) => state === 'weeping')) return 'weeping fitting'
  return fittings.length === 0 || fittings.some(({ state }) => state === 'not checked')
    ? 'fittings not checked'
    : 'line'
}

function fittingReasons(verdict: HoldVerdict, fittings: readonly FittingCheck[]): HoldReason[] {
  const weeping = fittings.filter(({ state }) => state === 'weeping')
  if (weeping.length > 0) {
    const key = verdict === 'holds' ? 'hold_weeps_yet_holds' : 'hold_fitting_weeps'
    return [{ key, values: { count: weeping.length, name: weeping[0]!.name } }]
  }
  if (verdict !== 'drops' && verdict !== 'would not come up to pressure') return []
  return [{ key: dropIs(fittings) === 'line' ? 'hold_fittings_tight' : 'hold_fittings_not_checked', values: {} }]
}
