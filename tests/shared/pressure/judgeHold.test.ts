import { describe, expect, it } from 'vitest'
import type { FittingCheck } from '../../../shared/pressure/gaugeLog'
import { judgeHold } from '../../../shared/pressure/judgeHold'
import { pipeSize } from '../../../shared/pressure/pipeSizes'
import { PIPE_WALLS } from '../../../shared/pressure/pipeWalls'
import { type HoldCounts, runHolds } from '../../bench/pressure/runHolds'
import { everyMinute, holdTest, reading } from './holds'

const fitting = (state: FittingCheck['state']): FittingCheck => ({ id: state, name: 'Plug A', state, by: 'soap' })
const keys = (test: Parameters<typeof judgeHold>[0]) => judgeHold(test).reasons.map(({ key }) => key)

const STEADY = Array.from({ length: 11 }, () => 11)
const FALLING = Array.from({ length: 11 }, (_, i) => Number((11 - 0.1 * i).toFixed(1)))

describe('a hold test', () => {
  it('holds when the needle stays, and says what no gauge can see', () => {
    expect(judgeHold(holdTest(everyMinute(STEADY))).verdict).toBe('holds')
    expect(keys(holdTest(everyMinute(STEADY)))).toEqual([
      'hold_holds',
      'hold_temperature_not_told',
      'hold_unseen_cancelling',
    ])
  })

  it('drops when the needle goes down step by step', () => {
    const { verdict, fit } = judgeHold(holdTest(everyMinute(FALLING)))
    expect(verdict).toBe('drops')
    expect(fit!.fallKpaPerMin.low).toBeLessThan(0.1 * 6.894757)
    expect(fit!.fallKpaPerMin.high).toBeGreaterThan(0.1 * 6.894757)
  })

  it('drops when most of the pressure is gone, whether or not the time is over', () => {
    expect(judgeHold(holdTest([reading(0, 11), reading(20, 6), reading(40, 2), reading(60, 0)])).verdict).toBe('drops')
  })

  it('cannot tell too soon, from too few readings, or over a long gap', () => {
    expect(keys(holdTest(everyMinute(STEADY.slice(0, 4))))).toEqual(['hold_too_short', 'hold_too_few'])
    expect(keys(holdTest([]))).toEqual(['hold_too_few'])
    const gap = [0, 10, 20, 30, 40, 50, 400].map((timeS) => reading(timeS, 11))
    expect(keys(holdTest(gap))[0]).toBe('hold_gap')
    expect(judgeHold(holdTest(gap)).verdict).toBe('cannot tell')
  })

  it('keeps to other figures where the maker or the code asks for them', () => {
    const rules = { leastKpa: 172, mostKpa: 180, leastHoldS: 900 }
    expect(keys(holdTest(everyMinute(STEADY), { rules }))).toEqual(['hold_below_asked', 'hold_too_short'])
  })

  it('cannot tell while it is settling: fast at first and then slower', () => {
    const settling = [11, 10.6, 10.4, 10.2, 10.1, 10.1, 10, 10, 10, 10, 10, 10]
    expect(keys(holdTest(everyMinute(settling)))[0]).toBe('hold_still_settling')
    expect(judgeHold(holdTest(everyMinute(settling))).verdict).toBe('cannot tell')
  })

  it('cannot tell when the gauge rises', () => {
    const rising = everyMinute([11, 11, 11, 11.1, 11.1, 11.1, 11.2, 11.2, 11.2, 11.3, 11.3])
    expect(keys(holdTest(rising))[0]).toBe('hold_rises')
  })

  it('would not come up when the gauge never got there', () => {
    const test = holdTest([reading(-60, 2), reading(-30, 3), reading(-5, 3.1)], { cameUp: false })
    expect(judgeHold(test).verdict).toBe('would not come up to pressure')
    expect(keys(test)).toEqual(['hold_came_up_to', 'hold_fittings_not_checked'])
    expect(keys(holdTest([], { cameUp: false }))[0]).toBe('hold_never_came_up')
  })
})

describe('a temperature that was told', () => {
  const pipe = { size: pipeSize(1.5), wall: PIPE_WALLS.pvc }
  const told = (values: readonly number[], startTemperatureC: number, endTemperatureC: number) =>
    judgeHold(holdTest(everyMinute(values), { startTemperatureC, endTemperatureC }), pipe)

  it('that moved keeps a steady gauge from holding', () => {
    expect(told(STEADY, 20, 20.5).verdict).toBe('cannot tell')
    expect(told(STEADY, 20, 20.5).reasons[0]!.key).toBe('hold_temperature_moved')
    expect(told(STEADY, 20, 20).verdict).toBe('holds')
  })

  it('that fell may be the whole drop, and that rose is not', () => {
    expect(told(FALLING, 20, 19.3).reasons[0]!.key).toBe('hold_temperature_fell')
    expect(told(FALLING, 20, 20.5).verdict).toBe('drops')
  })
})

describe('a drop', () => {
  const dropOf = (...fittings: FittingCheck[]) => judgeHold(holdTest(everyMinute(FALLING), { fittings })).dropOf

  it("counts as the line's only when every plug and fitting was found tight", () => {
    expect(dropOf()).toBe('fittings not checked')
    expect(dropOf(fitting('tight'), fitting('not checked'))).toBe('fittings not checked')
    expect(dropOf(fitting('tight'), fitting('weeping'))).toBe('weeping fitting')
    expect(dropOf(fitting('tight'))).toBe('line')
    expect(judgeHold(holdTest(everyMinute(STEADY), { fittings: [fitting('tight')] })).dropOf).toBeNull()
  })

  it('says which fitting weeps, also when the gauge holds', () => {
    const weeping = { fittings: [fitting('weeping')] }
    expect(keys(holdTest(everyMinute(FALLING), weeping))).toContain('hold_fitting_weeps')
    expect(keys(holdTest(everyMinute(STEADY), weeping))).toContain('hold_weeps_yet_holds')
  })
})

describe('simulated tests (seeds "unit"; the bench has many more)', () => {
  const count = 12
  const held = ({ holds }: HoldCounts) => holds

  it('never hold with a leak of 1.5 steps, nor with one that a drift hides and shows', () => {
    expect(held(runHolds('unit', 'leak', count))).toBe(0)
    expect(held(runHolds('unit', 'least leak', count))).toBe(0)
    expect(held(runHolds('unit', 'entered', count))).toBeLessThanOrEqual(1)
    expect(held(runHolds('unit', 'bent', count))).toBeLessThanOrEqual(1)
  })

  it('drop with a leak of 3 steps, and not when tight', () => {
    expect(runHolds('unit', 'large leak', count).drops).toBeGreaterThanOrEqual(0.9 * count)
    const tight = runHolds('unit', 'tight', count)
    expect(tight.drops).toBe(0)
    expect(tight.cannotTell).toBeLessThanOrEqual(0.4 * count) // 15 % is the bench's bound; a dozen tests scatter
  })

  it('say of a drift that takes the leak away that no gauge can see it', () => {
    const cancelled = runHolds('unit', 'cancelled', count)
    expect(cancelled.holds).toBeGreaterThan(0)
    expect(cancelled.unsaid).toBe(0)
  })
})
