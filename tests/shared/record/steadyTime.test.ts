import { describe, expect, it } from 'vitest'
import { steadyTime } from '../../../shared/record/steadyTime'

const start = { wallS: 1000, runningS: 5 }

describe('the time of a clip', () => {
  it('is that of the device as long as its clocks agree', () => {
    expect(steadyTime(start, { wallS: 1060, runningS: 65 })).toMatchObject({ timeS: 1060, setBackS: 0 })
    expect(steadyTime(start, { wallS: 1059, runningS: 65 })).toMatchObject({ timeS: 1060, setBackS: 0 })
  })

  it('is counted on when the clock is set back, and by how much is told', () => {
    expect(steadyTime(start, { wallS: -2540, runningS: 65 })).toMatchObject({ timeS: 1060, setBackS: 3600 })
  })

  it('follows the clock forward, as after a sleep, and counts on from there', () => {
    const woken = steadyTime(start, { wallS: 5000, runningS: 65 })
    expect(woken).toMatchObject({ timeS: 5000, setBackS: 0 })
    expect(steadyTime(woken.start, { wallS: 1100, runningS: 75 })).toMatchObject({ timeS: 5010, setBackS: 3910 })
  })
})
