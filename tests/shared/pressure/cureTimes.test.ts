import { describe, expect, it } from 'vitest'
import { type Adhesive, type CureTimes, cureStage } from '../../../shared/pressure/cureTimes'

const at = (minutes: number, told: { adhesive?: Adhesive; times?: CureTimes | null; temperatureC?: number } = {}) =>
  cureStage({
    adhesive: 'two-part wet',
    times: null,
    temperatureC: null,
    startS: 1000,
    nowS: 1000 + 60 * minutes,
    ...told,
  })

describe('the cure timer', () => {
  // 2 to 3 minutes to work and 15 to 20 before pressure: common practice, no source.
  it('of a two-part adhesive goes from working to looking, and never says that it has cured', () => {
    expect(at(1)).toEqual({ stage: 'working', leftS: 120, isCold: false })
    expect(at(5)).toEqual({ stage: 'leave alone', leftS: 600, isCold: false })
    expect(at(16)).toEqual({ stage: 'may be ready: look', leftS: 240, isCold: false })
    expect(at(500)).toEqual({ stage: 'look at the dab', leftS: null, isCold: false })
  })

  it('says that the cold takes longer, unless the maker was asked', () => {
    expect(at(5, { temperatureC: 8 }).isCold).toBe(true)
    expect(at(5, { temperatureC: 8, times: { workMin: null, pressureMin: [60, 90] } }).isCold).toBe(false)
  })

  it("knows nothing of solvent cement and others until the maker's times are typed in", () => {
    expect(at(5, { adhesive: 'solvent cement' }).stage).toBe('times missing')
    expect(at(5, { adhesive: 'other' }).stage).toBe('times missing')
    const times = { workMin: null, pressureMin: [120, 120] } as const
    expect(at(5, { adhesive: 'solvent cement', times })).toEqual({
      stage: 'leave alone',
      leftS: 6900,
      isCold: false,
    })
  })

  it('refuses a clock that was set back, and times that are turned round', () => {
    expect(() => at(-1)).toThrow('the clock was set back')
    expect(() => at(1, { times: { workMin: null, pressureMin: [20, 15] } })).toThrow('pressureMin is 20 to 15')
  })
})
