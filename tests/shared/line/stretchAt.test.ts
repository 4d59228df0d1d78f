import { describe, expect, it } from 'vitest'
import { depthAt } from '../../../shared/line/depthAt'
import { ASSUMED_DEPTH_M, type Stretch } from '../../../shared/line/line'
import { lineRange } from '../../../shared/line/lineRange'
import { stretchAt } from '../../../shared/line/stretchAt'

const stretch = (fromM: number, toM: number, depthM: number | null = null): Stretch => ({
  fromM,
  toM,
  cover: 'grass',
  depthM,
  digCostPerM: null,
})
const STRETCHES = [stretch(0, 4), stretch(4, 9, 0.7), stretch(8, 10, 0.3)]

describe('a stretch', () => {
  it('is found by a place it holds, its ends included, the later told first', () => {
    const at = (alongM: number) => STRETCHES.indexOf(stretchAt({ stretches: STRETCHES }, alongM)!)
    expect([0, 3, 4, 7, 8.5, 10].map(at)).toEqual([0, 0, 1, 1, 2, 2])
  })

  it('is none where none was told', () => {
    expect(stretchAt({ stretches: STRETCHES }, 10.1)).toBeNull()
    expect(stretchAt({ stretches: [] }, 0)).toBeNull()
  })
})

describe('the depth', () => {
  it('is the stretch’s own, else the line’s, else the assumed one', () => {
    expect(depthAt({ stretches: STRETCHES, depthM: 0.5 }, 5)).toEqual({ depthM: 0.7, told: true })
    expect(depthAt({ stretches: STRETCHES, depthM: 0.5 }, 1)).toEqual({ depthM: 0.5, told: true })
    expect(depthAt({ stretches: STRETCHES, depthM: null }, 1)).toEqual({ depthM: ASSUMED_DEPTH_M, told: false })
  })
})

describe('the range of a line', () => {
  it('is its length, else that of its points', () => {
    expect(lineRange({ lengthM: 14 }, [3, 99])).toEqual({ fromM: 0, toM: 14 })
    expect(lineRange({ lengthM: null }, [3, -1, 7])).toEqual({ fromM: -1, toM: 7 })
    expect(lineRange({ lengthM: null }, [])).toBeNull()
  })
})
