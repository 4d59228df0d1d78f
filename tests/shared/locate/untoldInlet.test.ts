import { describe, expect, it } from 'vitest'
import { locate } from '../../../shared/locate/locate'
import { close } from '../../support/close'
import { type IdealSweep, idealSweep } from '../../support/idealSweep'

const plain: IdealSweep = {
  count: 10,
  spacingM: 1,
  depthM: 0.5,
  leakAlongM: 6.3,
  overFloorDb: 20,
  air: ['on', 'off'],
  gainSdDb: 1,
  scatterDb: 0.5,
}
const LAST_M = 9
const UNTOLD = ['reason_untold_inlet_start', 'reason_untold_inlet_end']

function told(sweep: IdealSweep, airInletM: number | null) {
  const { line, soundings } = idealSweep(sweep)
  const answer = locate({ line: { ...line, airInletM }, soundings })
  return { answer, said: answer.reasons.map(({ key }) => key).filter((key) => UNTOLD.includes(key)) }
}

// Levels are invented: straight from the locator's own law, with scatter.
describe('an air inlet past an end that hisses louder than the leak (rule 4)', () => {
  it.each([
    { where: 'start', inletM: -0.8, leakM: 6.3, key: 'reason_untold_inlet_start' },
    { where: 'end', inletM: LAST_M + 0.8, leakM: LAST_M - 6.3, key: 'reason_untold_inlet_end' },
  ])('is found at the $where though nobody told of it, and said', ({ inletM, leakM, key }) => {
    const sweep = {
      ...plain,
      leakAlongM: leakM,
      others: [{ atM: inletM, overFloorDb: 50, sounds: 'with air' as const }],
    }
    const { answer, said } = told(sweep, null)
    expect(said).toEqual([key])
    expect(answer.verdict).toBe('located')
    close(answer.sources[0]?.alongM, leakM, { abs: 0.2, because: 'a fifth of the spacing, as with a told inlet' })
    expect(answer.sources).toHaveLength(1)
  })

  it('is not looked for where the inlet was told', () => {
    const inletM = -0.8
    const sweep = { ...plain, others: [{ atM: inletM, overFloorDb: 50, sounds: 'with air' as const }] }
    expect(told(sweep, inletM).said).toEqual([])
  })
})

describe('without an inlet to be heard (rule 4)', () => {
  it.each([0.1, 3.5, 6.3, LAST_M - 0.1])('none is made up beside a leak at %f m', (leakAlongM) => {
    const { answer, said } = told({ ...plain, leakAlongM }, null)
    expect(said).toEqual([])
    close(answer.sources[0]?.alongM, leakAlongM, { abs: 0.25, because: 'a quarter of the spacing, also at an end' })
  })

  it('none is made up where nothing is heard', () => {
    const { answer, said } = told({ ...plain, leakAlongM: null }, null)
    expect(answer.verdict).toBe('no leak heard')
    expect(said).toEqual([])
  })
})
