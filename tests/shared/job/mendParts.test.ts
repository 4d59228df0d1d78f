import { describe, expect, it } from 'vitest'
import { jobTimes } from '../../../shared/job/jobTimes'
import { type MendPart, NO_MEND } from '../../../shared/job/mend'
import { partProof } from '../../../shared/job/partProof'
import { partsToTest } from '../../../shared/job/partsToTest'
import { freshPressureTest, type PressureTest } from '../../../shared/job/pressureTests'
import type { HoldVerdict } from '../../../shared/pressure/holdVerdicts'

function test(id: string, verdict: HoldVerdict | null): PressureTest {
  const kept = verdict && { timeS: 9, verdict, version: '0.1.0' }
  return freshPressureTest({ id, createdS: 0, unit: 'psi', kept })
}

function part(id: string, [fromM, toM]: readonly [number, number], testIds: readonly string[] = []): MendPart {
  return { id, name: id, fromM, toM, testIds }
}

describe('the proof of a part', () => {
  it('is its last test, once that was closed', () => {
    const tests = [test('t1', 'drops'), test('t2', 'holds'), test('t3', null)]
    expect(partProof({ testIds: [] }, tests)).toEqual({ state: 'not tested' })
    expect(partProof({ testIds: ['t1', 't2'] }, tests).state).toBe('holds')
    expect(partProof({ testIds: ['t2', 't1'] }, tests).state).toBe('drops')
    expect(partProof({ testIds: ['t2', 't3'] }, tests)).toEqual({ state: 'test open' })
  })

  it('is not there when the test it names is not', () => {
    expect(partProof({ testIds: ['gone'] }, [])).toEqual({ state: 'not tested' })
  })
})

describe('the part to test next', () => {
  const density = { alongM: [6, 6.5, 7], perM: [0, 2, 0] } // one leak about 6.5 m along

  it('is the one that proves most length: where the leak hardly can be', () => {
    const parts = [part('a', [0, 9]), part('b', [9, 13])]
    expect(partsToTest(parts, [], density)).toEqual(['b', 'a'])
    expect(partsToTest([part('a', [0, 9]), part('b', [9, 13])], [], { alongM: [10, 11], perM: [1, 1] })).toEqual([
      'a',
      'b',
    ])
  })

  it('is never one that holds', () => {
    expect(partsToTest([part('a', [0, 9], ['t']), part('b', [9, 13])], [test('t', 'holds')], density)).toEqual(['b'])
    expect(partsToTest([part('a', [0, 9], ['t'])], [test('t', 'holds')], null)).toEqual([])
  })

  it('is found without an answer as well', () => {
    expect(new Set(partsToTest([part('a', [0, 9]), part('b', [9, 13])], [], null))).toEqual(new Set(['a', 'b']))
  })
})

describe('the times of a job', () => {
  it('come by themselves: damage found, not an empty hole, and the joint', () => {
    const found = { way: 'opened', cause: 'joint', note: '', photo: null, shown: null } as const
    const at = (timeS: number, alongM: number | null) => ({ ...found, id: String(timeS), timeS, alongM })
    const mend = { ...NO_MEND, joint: { ...NO_MEND.joint, startS: 50 }, closedS: 90 }
    expect(jobTimes(10, { found: [at(20, null), at(40, 6), at(30, 6)], mend })).toEqual({
      arrivedS: 10,
      foundS: 30,
      mendedS: 50,
      closedS: 90,
    })
    expect(jobTimes(10, {})).toEqual({ arrivedS: 10, foundS: null, mendedS: null, closedS: null })
  })
})
