import type { Random } from '../base/random'
import { ATMOSPHERE_PA } from '../base/units'
import type { GaugeReading } from './gaugeLog'
import { type FilledLine, lineComplianceM3PerPa, lineVolumeM3 } from './lineCompliance'
import { orificeFlowM3PerS } from './orificeFlow'
import { KPA_PER, type PressureUnit } from './pressureUnit'
import { airComplianceM3PerPa, trappedVolumeM3 } from './trappedAir'
import { waterExpansionPerK } from './waterProperties'

/** A shut line under pressure, and the gauge on it. */
export interface SimulatedLine extends FilledLine {
  /** Trapped air, at the atmosphere's pressure, m³. */
  readonly airM3: number
  /** Holes of the line itself and of a weeping plug, m; 0 for tight. */
  readonly leakDiameterM: number
  readonly weepDiameterM: number
  readonly startPa: number
  /** °C at a time of the hold, s. */
  readonly temperatureC: (timeS: number) => number
}

export interface SimulatedGauge {
  readonly unit: PressureUnit
  readonly resolution: number
  /** Standard deviation of needle and eye, in steps of the resolution. */
  readonly noiseSteps: number
}

/**
 * Pressure of a shut line from moment to moment.
 *
 *     dp/dt = [ (β_water − 3α_pipe)·V·dT/dt + V_air/T·dT/dt − Q_leak(p) − Q_weep(p) ] / ( C_line + C_air(p) )
 *
 * The holes as orifices into the open, the air by Boyle at the line's temperature. Fourth-order Runge and Kutta.
 *
 * @param atS Times in rising order from 0, s.
 * @returns Pa over the atmosphere; never below 0, where the water runs out.
 */
export function simulatedPressuresPa(line: SimulatedLine, atS: readonly number[]): number[] {
  const volumeM3 = lineVolumeM3(line)
  const stiff = lineComplianceM3PerPa(line)
  const slope = (timeS: number, pa: number) => {
    const gaugePa = Math.max(0, pa)
    const celsius = line.temperatureC(timeS)
    const perS = (line.temperatureC(timeS + 0.5) - line.temperatureC(timeS - 0.5)) / 1
    const swell = (waterExpansionPerK(celsius) - 3 * line.wall.expansionPerK) * volumeM3
    const airSwell = trappedVolumeM3(line.airM3, gaugePa) / (celsius + 273.15)
    const outM3PerS = orificeFlowM3PerS(line.leakDiameterM, gaugePa) + orificeFlowM3PerS(line.weepDiameterM, gaugePa)
    return ((swell + airSwell) * perS - outM3PerS) / (stiff + airComplianceM3PerPa(line.airM3, gaugePa))
  }
  const pressures: number[] = []
  let nowS = 0
  let pa = line.startPa
  for (const timeS of atS) {
    const steps = Math.max(1, Math.ceil((timeS - nowS) / LONGEST_STEP_S))
    const stepS = (timeS - nowS) / steps
    for (let i = 0; i < steps; i++, nowS += stepS) pa = Math.max(0, pa + stepS * rungeKutta(slope, nowS, pa, stepS))
    nowS = timeS
    pressures.push(pa)
  }
  return pressures
}

const LONGEST_STEP_S = 10

function rungeKutta(slope: (timeS: number, pa: number) => number, timeS: number, pa: number, stepS: number): number {
  const a = slope(timeS, pa)
  const b = slope(timeS + stepS / 2, pa + (stepS / 2) * a)
  const c = slope(timeS + stepS / 2, pa + (stepS / 2) * b)
  const d = slope(timeS + stepS, pa + stepS * c)
  return (a + 2 * b + 2 * c + d) / 6
}

/** The gauge's readings of these pressures: noise of needle and eye, then rounded to its step. */
export function readGauge(
  random: Random,
  gauge: SimulatedGauge,
  readings: readonly { readonly timeS: number; readonly pa: number }[],
): GaugeReading[] {
  const stepPa = gauge.resolution * KPA_PER[gauge.unit] * 1000
  return readings.map(({ timeS, pa }, i) => {
    const steps = Math.round(Math.max(-ATMOSPHERE_PA, pa) / stepPa + random.normal(0, gauge.noiseSteps))
    // As a person writes it down: a whole number of steps without binary dust.
    const value = Number((steps * gauge.resolution).toPrecision(12))
    return { id: `r${i + 1}`, timeS, value, note: '', leftOut: false }
  })
}
