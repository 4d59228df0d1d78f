import { describe, expect, it } from 'vitest'
import { matchLiftDb } from '../../../shared/listen/matchLiftDb'

describe('the lift of a quiet clip', () => {
  it('makes it as loud as the loudest other', () => {
    expect(matchLiftDb(-50, [-44, -47])).toBe(6)
  })

  it('is 12 dB at most', () => {
    expect(matchLiftDb(-70, [-40])).toBe(12)
  })

  it('never lowers the loudest', () => {
    expect(matchLiftDb(-40, [-50, null])).toBe(0)
  })

  it('is none for a clip without a level, and without others', () => {
    expect(matchLiftDb(null, [-30])).toBe(0)
    expect(matchLiftDb(-30, [])).toBe(0)
  })
})
