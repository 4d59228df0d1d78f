import { describe, expect, it } from 'vitest'
import { METRES_PER_FOOT, PASCALS_PER_PSI } from '../../../shared/base/units'
import { dropMeaning } from '../../../shared/pressure/dropMeaning'
import { orificeFlowM3PerS } from '../../../shared/pressure/orificeFlow'
import { pipeSize } from '../../../shared/pressure/pipeSizes'
import { PIPE_WALLS } from '../../../shared/pressure/pipeWalls'
import { simulatedPressuresPa } from '../../../shared/pressure/simulateHold'
import { close } from '../../support/close'

const line = { size: pipeSize(1.5)!, wall: PIPE_WALLS.pvc, lengthM: 100 * METRES_PER_FOOT }
const PSI_KPA = PASCALS_PER_PSI / 1000
const exactly = (value: number) => ({ value, low: value, high: value })

describe('what a fall means', () => {
  it('is hardly any water in a line without air', () => {
    // 1 psi in 15 min on 100 ft of 1-1/2 in Schedule 40: 1.198 mL in 15 min, 0.080 mL/min (worked by hand).
    const meaning = dropMeaning(line, { fallKpaPerMin: exactly(PSI_KPA / 15), gaugePa: 20 * PASCALS_PER_PSI })
    close(meaning.leastMlPerMin, 0.08, { abs: 0.0005, because: 'half of the last figure printed' })
    close(meaning.lineMlPerKpa * PSI_KPA, 1.1977, { abs: 5e-5, because: 'the same' })
  })

  it('is up to many times more with trapped air: a slow fall is no proof of a small leak', () => {
    const hold = { fallKpaPerMin: exactly(1), gaugePa: 76e3 }
    const airy = dropMeaning(line, hold)
    expect(airy.mostMlPerMin / airy.leastMlPerMin).toBeGreaterThan(10)
    close(airy.mostHoleMm / airy.leastHoleMm, Math.sqrt(airy.mostMlPerMin / airy.leastMlPerMin), {
      rel: 1e-9,
      because: 'flow grows with the square of the diameter',
    })
    const bled = dropMeaning(line, { ...hold, airShare: 0 })
    close(bled.mostMlPerMin, bled.leastMlPerMin, { rel: 1e-12, because: 'no air, no range' })
    close(dropMeaning(line, { ...hold, airShare: airy.doublingAirMl / 39_140 }).airyMlPerKpa / bled.lineMlPerKpa, 2, {
      rel: 1e-3,
      because: '39.14 L is rounded',
    })
  })

  it('names the hole that the simulator drilled, somewhere in its range', () => {
    const airM3 = 1e-4
    const diameterM = 2e-5
    const still = { ...line, airM3, leakDiameterM: diameterM, weepDiameterM: 0, startPa: 76e3, temperatureC: () => 18 }
    const [end] = simulatedPressuresPa(still, [60])
    const fall = (76e3 - end!) / 1000
    const meaning = dropMeaning(line, { fallKpaPerMin: exactly(fall), gaugePa: 76e3 - (fall * 1000) / 2 })
    expect(meaning.leastHoleMm).toBeLessThan(1000 * diameterM)
    expect(meaning.mostHoleMm).toBeGreaterThan(1000 * diameterM)
  })

  it('is nothing for a gauge that does not fall, and needs a pressure', () => {
    expect(dropMeaning(line, { fallKpaPerMin: exactly(-1), gaugePa: 76e3 }).mostHoleMm).toBe(0)
    expect(() => dropMeaning(line, { fallKpaPerMin: exactly(1), gaugePa: 0 })).toThrow('gaugePa is 0')
    expect(() => dropMeaning(line, { fallKpaPerMin: exactly(1), gaugePa: 1, airShare: 2 })).toThrow('airShare is 2')
  })
})

describe('the simulated line', () => {
  const tight = { ...line, airM3: 0, leakDiameterM: 0, weepDiameterM: 0, startPa: 76e3, temperatureC: () => 18 }

  it('keeps its pressure when it is tight and nothing warms', () => {
    expect(simulatedPressuresPa(tight, [0, 300, 900])).toEqual([76e3, 76e3, 76e3])
  })

  it('loses its pressure through a hole as the square of the time left (closed form)', () => {
    // Without air dp/dt = −k√p, so √p falls evenly.
    const leaking = { ...tight, leakDiameterM: 3e-5 }
    const [half, whole] = simulatedPressuresPa(leaking, [150, 300]).map(Math.sqrt)
    close(half, (Math.sqrt(76e3) + whole!) / 2, { rel: 1e-6, because: 'Runge and Kutta in steps of 10 s' })
    const perS = orificeFlowM3PerS(3e-5, 76e3) / (1.1977e-6 / PASCALS_PER_PSI)
    const [early] = simulatedPressuresPa(leaking, [1])
    close(76e3 - early!, perS, { rel: 1e-3, because: 'one second of a slow fall' })
  })

  it('follows the gas law when it is a pocket of air that warms', () => {
    // A pocket in a pipe that neither swells nor gives: p/T stays. Copper a metre thick stands for it.
    const stiff = { ...tight, size: { insideDiameterM: 0.04, wallM: 1 }, wall: { modulusPa: 1e15, expansionPerK: 0 } }
    const pocket = { ...stiff, lengthM: 1e-3, airM3: 1, temperatureC: (timeS: number) => 20 + timeS / 100 }
    const [end] = simulatedPressuresPa(pocket, [200])
    close((end! + 101_325) / (76e3 + 101_325), 295.15 / 293.15, { rel: 1e-6, because: 'Charles' })
  })

  it('never sucks: an open line ends at nothing', () => {
    expect(simulatedPressuresPa({ ...tight, leakDiameterM: 2e-3 }, [60])[0]).toBe(0)
  })
})
