import { describe, expect, it } from 'vitest'
import { judgeHold } from '../../../shared/pressure/judgeHold'
import { readingProblems } from '../../../shared/pressure/readingProblems'
import { everyMinute, holdTest, reading } from './holds'

const found = (test: Parameters<typeof readingProblems>[0]) =>
  readingProblems(test).map(({ key, severity, values: { reading: number } }) => [key, number, severity])

const STEADY = [11, 11, 11, 11, 11, 11]

describe('what is odd in a gauge log', () => {
  it('is nothing when nothing is', () => {
    expect(found(holdTest(everyMinute([11, 11, 10.9, 10.9, 10.8, 10.8])))).toEqual([])
    expect(found(holdTest([]))).toEqual([])
  })

  it('is a reading that comes before one before it; it counts at its own time', () => {
    const test = holdTest([reading(0, 11), reading(120, 11), reading(60, 11), ...everyMinute(STEADY).slice(3)])
    expect(found(test)).toEqual([['reading_out_of_order', 3, 'note']])
    expect(judgeHold(test).verdict).toBe('holds')
  })

  it('is a time that comes twice, and in doubt when the readings differ', () => {
    const twice = (value: number) => holdTest([...everyMinute(STEADY), reading(60, value)])
    expect(found(twice(11))).toEqual([['reading_same_time', 7, 'note']])
    expect(found(twice(10.9))).toEqual([['reading_same_time', 7, 'doubt']])
  })

  it('is a gauge that rises with the supply shut', () => {
    expect(found(holdTest(everyMinute([11, 11, 11.1, 11.2, 11.2, 11.2])))).toEqual([['reading_rises', 4, 'note']])
    expect(found(holdTest(everyMinute([11, 11, 11.1, 11, 11.1, 11])))).toEqual([])
  })

  it('is one unit among readings of another', () => {
    // 1 psi = 6.9 kPa, 1 bar = 14.5 psi.
    expect(found(holdTest(everyMinute([11, 11, 75.8, 11, 11, 11])))).toEqual([
      ['reading_unit_slip', 3, 'doubt'],
      ['reading_rises', 3, 'note'],
    ])
    expect(found(holdTest(everyMinute([11, 11, 0.76, 11, 11, 11])))[0]).toEqual(['reading_unit_slip', 3, 'doubt'])
    expect(found(holdTest(everyMinute([75, 75, 75, 75, 75, 75]), { resolution: 1 }))[0]).toEqual([
      'reading_unit_asked',
      1,
      'doubt',
    ])
  })

  it('is not a unit when the pressure goes by and by', () => {
    expect(found(holdTest(everyMinute([11, 8, 5.5, 3.7, 2.4, 1.6, 1.1])))).toEqual([])
  })

  it('is a pressure that cannot be', () => {
    expect(found(holdTest(everyMinute([11, -20, 11, 11, 11, 11])))[0]).toEqual(['reading_below_vacuum', 2, 'doubt'])
    expect(found(holdTest(everyMinute([11, 5000, 11, 11, 11, 11])))[0]).toEqual(['reading_beyond_pipe', 2, 'doubt'])
  })

  it('is a clock that jumped', () => {
    const test = holdTest([...everyMinute(STEADY), reading(3900, 11)])
    expect(found(test)).toEqual([['reading_clock_jumped', 7, 'doubt']])
  })

  it('keeps the test from a verdict until a person decided; what they leave out stays in the log', () => {
    const readings = everyMinute([11, 11, 75.8, 11, 11, 11, 11])
    const test = holdTest(readings)
    expect(judgeHold(test).verdict).toBe('cannot tell')
    expect(judgeHold(test).reasons[0]).toEqual({ key: 'hold_readings_in_doubt', values: { count: 1, reading: 3 } })
    const decided = holdTest(readings.map((each, i) => ({ ...each, leftOut: i === 2 })))
    expect(judgeHold(decided).verdict).toBe('holds')
    expect(decided.readings).toHaveLength(7)
  })
})
