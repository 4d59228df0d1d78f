import { InputError } from '../base/errors'
import type { Bounded } from './holdFit'
import { type FilledLine, lineComplianceM3PerPa, lineVolumeM3 } from './lineCompliance'
import { makeUpAllowanceM3PerH } from './makeUpAllowance'
import { orificeDiameterM } from './orificeFlow'
import { airComplianceM3PerPa } from './trappedAir'

/** What a fall of the gauge can mean for the line, from no trapped air to the most that is reckoned with. */
export interface DropMeaning {
  /** Of the line itself, mL for a kPa. */
  readonly lineMlPerKpa: number
  /** With the most air that is reckoned with. */
  readonly airyMlPerKpa: number
  /** The air that is reckoned with at most, at the atmosphere's pressure, mL. */
  readonly airMl: number
  /** Air that alone would give as much as the whole line: mL at the atmosphere's pressure. */
  readonly doublingAirMl: number
  /** Loss: least with the slowest fall that fits and no air, most with the fastest and the most air. mL/min, ≥ 0. */
  readonly leastMlPerMin: number
  readonly mostMlPerMin: number
  /** Diameter of the round hole that loses as much, mm. */
  readonly leastHoleMm: number
  readonly mostHoleMm: number
  /** What the waterworks' rule would let a main of this size take up, to compare, mL/min. */
  readonly allowanceMlPerMin: number
}

/** Chosen: a small line that was filled from one end and not bled can keep this share of its volume as air. Invented. */
export const MOST_AIR_SHARE = 0.02

/**
 * What a fall means in water and in size of hole.
 *
 * The gauge tells how fast the pressure falls; how much water that is depends on what gives: a line full of water gives so
 * little that a pinhole empties its pressure in a second, a little air gives ten times as much. So a slow fall is no proof
 * of a small leak, and everything here is a range.
 *
 * @param fallKpaPerMin With its bounds; falls below 0 count as none.
 * @param gaugePa       Mean of the hold, > 0.
 * @param airShare      Trapped air at most, of the line's volume, 0 to 1.
 * @throws {InputError} a pressure that is not above 0, a share outside 0 to 1.
 */
export function dropMeaning(
  line: FilledLine,
  hold: { readonly fallKpaPerMin: Bounded; readonly gaugePa: number; readonly airShare?: number },
): DropMeaning {
  const { fallKpaPerMin, gaugePa, airShare = MOST_AIR_SHARE } = hold
  if (!(gaugePa > 0)) throw new InputError(`gaugePa is ${gaugePa}; must be > 0`)
  if (!(airShare >= 0 && airShare <= 1)) throw new InputError(`airShare is ${airShare}; must be 0 to 1`)
  const airM3 = airShare * lineVolumeM3(line)
  const line1 = lineComplianceM3PerPa(line)
  const airy = line1 + airComplianceM3PerPa(airM3, gaugePa)
  const least = (line1 * 1000 * Math.max(0, fallKpaPerMin.low)) / 60
  const most = (airy * 1000 * Math.max(0, fallKpaPerMin.high)) / 60
  const allowance = makeUpAllowanceM3PerH({ lengthM: line.lengthM, diameterM: line.size.insideDiameterM, gaugePa })
  return {
    lineMlPerKpa: line1 * ML * 1000,
    airyMlPerKpa: airy * ML * 1000,
    airMl: airM3 * ML,
    doublingAirMl: (line1 / airComplianceM3PerPa(1, gaugePa)) * ML,
    leastMlPerMin: least * ML * 60,
    mostMlPerMin: most * ML * 60,
    leastHoleMm: orificeDiameterM(least, gaugePa) * 1000,
    mostHoleMm: orificeDiameterM(most, gaugePa) * 1000,
    allowanceMlPerMin: (allowance * ML) / 60,
  }
}

const ML = 1e6 // in a cubic metre
