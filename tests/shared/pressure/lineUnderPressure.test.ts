import { describe, expect, it } from 'vitest'
import { ATMOSPHERE_PA, METRES_PER_FOOT, PASCALS_PER_PSI } from '../../../shared/base/units'
import { givePerPa, lineComplianceM3PerPa, lineVolumeM3 } from '../../../shared/pressure/lineCompliance'
import { M3_PER_GALLON, makeUpAllowanceM3PerH } from '../../../shared/pressure/makeUpAllowance'
import { orificeDiameterM, orificeFlowM3PerS } from '../../../shared/pressure/orificeFlow'
import { pipeSize } from '../../../shared/pressure/pipeSizes'
import { PIPE_WALLS } from '../../../shared/pressure/pipeWalls'
import { KPA_PER } from '../../../shared/pressure/pressureUnit'
import { storedEnergy } from '../../../shared/pressure/storedEnergy'
import { fullLinePaPerK, gasPocketPaPerK, temperatureEffect } from '../../../shared/pressure/temperatureEffect'
import { airComplianceM3PerPa, trappedVolumeM3 } from '../../../shared/pressure/trappedAir'
import { WATER_DENSITY_KG_PER_M3 } from '../../../shared/pressure/waterProperties'
import { close } from '../../support/close'

const PSI = PASCALS_PER_PSI
const HUNDRED_FEET = 100 * METRES_PER_FOOT
const schedule40 = (nominalIn: number) => ({
  size: pipeSize(nominalIn)!,
  wall: PIPE_WALLS.pvc,
  lengthM: HUNDRED_FEET,
})
const PRINTED = 'half of the last figure printed'

describe('units of pressure', () => {
  it('are exact: a pound-force on a square inch, a bar of 100 kPa', () => {
    // NIST SP 811 appendix B: 1 psi = 6.894757 kPa; 1 bar = 14.50377 psi, 1 atm = 14.69595 psi.
    close(KPA_PER.psi, 6.894757, { abs: 5e-7, because: PRINTED })
    close(KPA_PER.bar / KPA_PER.psi, 14.50377, { abs: 5e-6, because: PRINTED })
    close(ATMOSPHERE_PA / PSI, 14.69595, { abs: 5e-6, because: PRINTED })
  })

  it('agree with the head of water: 62.4 lb on a cubic foot make 0.4333 psi a foot', () => {
    // 62.4 lb/ft³ is the trade's round figure; 62.4/144 psi. Water of 998.2 kg/m³: 9.789 kPa a metre.
    const poundsPerFoot3 = (62.4 * 0.45359237 * 9.80665) / METRES_PER_FOOT ** 2
    close(poundsPerFoot3 / PSI, 62.4 / 144, { rel: 1e-12, because: 'the same definition twice' })
    close(WATER_DENSITY_KG_PER_M3 * 9.80665, 9789, { abs: 0.5, because: PRINTED })
  })
})

describe('a hole in the wall', () => {
  it('lets through what the orifice equation says, also in the gallons of the fire service', () => {
    // gpm = 29.84·Cd·d²·√p with d in inches and p in psi: fire-flow handbooks, from memory.
    const m3PerS = orificeFlowM3PerS(0.002, 20 * PSI)
    close(m3PerS * 60_000, 1.88, { abs: 0.0005, because: PRINTED })
    const gallonsPerMin = (m3PerS * 60) / M3_PER_GALLON
    close(gallonsPerMin, 29.84 * 0.6 * (0.002 / 0.0254) ** 2 * Math.sqrt(20), {
      rel: 1e-3,
      because: 'the handbook constant is rounded and for 62.3 lb/ft³',
    })
  })

  it('is as large as its flow says', () => {
    const flow = orificeFlowM3PerS(0.0013, 70e3)
    close(orificeDiameterM(flow, 70e3), 0.0013, { rel: 1e-12, because: 'the inverse' })
    expect(() => orificeDiameterM(1e-6, 0)).toThrow('gaugePa is 0')
  })
})

describe('a line full of water', () => {
  it('holds what ASTM D1785 sizes hold', () => {
    // Inside diameters of Schedule 40 as a public page of pipe data has them after ASTM D1785.
    for (const [nominalIn, litres] of [
      [1, 16.48],
      [1.5, 39.14],
      [2, 64.84],
    ] as const) {
      close(lineVolumeM3(schedule40(nominalIn)) * 1000, litres, { abs: 0.005, because: PRINTED })
    }
    close(lineVolumeM3(schedule40(1.5)) / M3_PER_GALLON, 10.34, { abs: 0.005, because: PRINTED })
  })

  it('gives so little that one psi is about a millilitre in 100 ft', () => {
    // Worked by hand from 1/K + D/(E·e) with K = 2.19 GPa and E = 400 000 psi.
    for (const [nominalIn, ml] of [
      [1, 0.3719],
      [1.5, 1.1977],
      [2, 2.361],
    ] as const) {
      close(lineComplianceM3PerPa(schedule40(nominalIn)) * PSI * 1e6, ml, { abs: 5e-5, because: PRINTED })
    }
  })

  it('carries a pressure wave at the speed that its give says', () => {
    // c = 1/√(ρ·(1/K + D/(E·e))) is Korteweg's celerity; worked values for Schedule 40: 553.3, 475.1, 435.5 m/s.
    for (const [nominalIn, speed] of [
      [1, 553.3],
      [1.5, 475.1],
      [2, 435.5],
    ] as const) {
      const line = schedule40(nominalIn)
      const give = lineComplianceM3PerPa(line) / lineVolumeM3(line)
      close(give, givePerPa(line), { rel: 1e-12, because: 'the same sum' })
      close(1 / Math.sqrt(WATER_DENSITY_KG_PER_M3 * give), speed, { abs: 0.05, because: PRINTED })
    }
  })

  it('has the celerity of large pipe in the handbook', () => {
    // Moser, Buried Pipe Design, table 4.2: DR 18 PVC 1311 ft/s. D/e of DR 18 is 16.
    const size = { insideDiameterM: 0.16, wallM: 0.01 }
    const give = givePerPa({ size, wall: PIPE_WALLS.pvc })
    close(1 / Math.sqrt(WATER_DENSITY_KG_PER_M3 * give) / METRES_PER_FOOT, 1311, {
      rel: 0.02,
      because: 'the handbook takes 300 000 psi for water and reckons to three figures',
    })
  })

  it('needs a length', () => {
    expect(() => lineVolumeM3({ ...schedule40(1), lengthM: 0 })).toThrow('lengthM is 0')
    expect(pipeSize(7)).toBeNull()
    expect(() => pipeSize(-1)).toThrow('nominalIn is -1')
  })
})

describe('trapped air', () => {
  it('follows Boyle, and one litre gives ten times what 100 ft of pipe give', () => {
    // p·V stays: 14.69595/34.69595 of a litre; V₀·p₀/p² = 12.21 mL a psi.
    close(trappedVolumeM3(1e-3, 20 * PSI) * 1000, 0.42356, { abs: 5e-6, because: PRINTED })
    const air = airComplianceM3PerPa(1e-3, 20 * PSI)
    close(air * PSI * 1e6, 12.208, { abs: 5e-4, because: PRINTED })
    expect(air / lineComplianceM3PerPa(schedule40(1.5))).toBeGreaterThan(10)
  })

  it('gives as its volume changes: the slope of Boyle (numeric)', () => {
    const step = 1
    const slope = (trappedVolumeM3(1e-3, 70e3) - trappedVolumeM3(1e-3, 70e3 + step)) / step
    close(airComplianceM3PerPa(1e-3, 70e3), slope, { rel: 1e-5, because: 'a difference over 1 Pa of 171 kPa' })
    expect(() => trappedVolumeM3(-1, 0)).toThrow('volumeM3 is -1')
    expect(() => trappedVolumeM3(1, -2e5)).toThrow('must be above -101325')
  })
})

describe('warmth', () => {
  it('changes a pocket of gas by a tenth of a psi a degree, and a full plastic line by psi', () => {
    // Charles: p/T, 34.696 psi absolute at 293.15 K.
    close(gasPocketPaPerK(20 * PSI, 20) / PSI, 0.1184, { abs: 5e-5, because: PRINTED })
    close(fullLinePaPerK(pipeSize(1.5)!, PIPE_WALLS.pvc, 20) / PSI, 1.67, {
      rel: 0.01,
      because: 'expansion of water and pipe known to two figures',
    })
  })

  it('turns its sign where water swells as slowly as the pipe', () => {
    const at = (celsius: number) => fullLinePaPerK(pipeSize(1.5)!, PIPE_WALLS.pvc, celsius)
    expect(at(10)).toBeLessThan(0)
    expect(at(20)).toBeGreaterThan(0)
    close(at(15) / at(20), 0, { abs: 0.15, because: 'about 15 °C for PVC' })
  })

  it('is a range, since nobody knows how much air there is', () => {
    const pipe = { size: pipeSize(1.5), wall: PIPE_WALLS.pvc }
    const { leastPa, mostPa } = temperatureEffect({ startC: 20, endC: 19, gaugePa: 70e3 }, pipe)
    close(mostPa, -gasPocketPaPerK(70e3, 20), { rel: 0.01, because: 'the pocket alone' })
    close(leastPa, -fullLinePaPerK(pipeSize(1.5)!, PIPE_WALLS.pvc, 20), { rel: 1e-9, because: 'water alone' })
    const unknown = temperatureEffect({ startC: 20, endC: 19, gaugePa: 70e3 }, { size: null, wall: null })
    expect(unknown.leastPa).toBeLessThan(leastPa)
    expect(temperatureEffect({ startC: 9, endC: 9, gaugePa: 70e3 }, pipe).mostPa).toBe(0)
  })
})

describe('what mains may take up', () => {
  it('is the published figure', () => {
    // An engineer's worked example on AWWA C600: 5710 ft of 8 in at 160 psi for two hours: 7.81 gal.
    const m3PerH = makeUpAllowanceM3PerH({
      lengthM: 5710 * METRES_PER_FOOT,
      diameterM: 8 * 0.0254,
      gaugePa: 160 * PSI,
    })
    close((2 * m3PerH) / M3_PER_GALLON, 7.81, { abs: 0.005, because: PRINTED })
    // In metric: m·mm·√kPa/794 798 litres an hour.
    close(m3PerH * 1000, (5710 * METRES_PER_FOOT * 8 * 25.4 * Math.sqrt((160 * PSI) / 1000)) / 794_798, {
      rel: 1e-5,
      because: 'the divisor has six figures',
    })
    expect(() => makeUpAllowanceM3PerH({ lengthM: 1, diameterM: 0, gaugePa: 1 })).toThrow('diameterM is 0')
  })
})

describe('stored energy', () => {
  it('of air is thousands of times that of water: the reason to test with water', () => {
    // 100 ft of 2 in at 30 psi, worked by hand: 13.60 kJ of air, 0.633 J of water, 7.3 J with the pipe's wall.
    const { airJ, waterJ, waterAndWallJ } = storedEnergy(schedule40(2), 30 * PSI)
    close(airJ / 1000, 13.6, { abs: 0.005, because: PRINTED })
    close(waterJ, 0.633, { abs: 0.0005, because: PRINTED })
    close(waterAndWallJ, 7.3, { abs: 0.05, because: PRINTED })
    expect(airJ / waterJ).toBeGreaterThan(20_000)
    expect(storedEnergy(schedule40(2), 0).airJ).toBe(0)
  })
})
