import { describe, expect, it } from 'vitest'
import type { Found } from '../../../shared/job/found'
import type { Job, JobLine } from '../../../shared/job/job'
import { windowHeld } from '../../../shared/job/windowHeld'
import { windowScore } from '../../../shared/job/windowScore'
import { close } from '../../support/close'

const ROUNDING = { abs: 1e-12, because: 'sums of a few decimals' }

function found(id: string, alongM: number | null, windowM: readonly [number, number] | null): Found {
  const shown = windowM && {
    windowM,
    probability: 0.8,
    alongM: (windowM[0] + windowM[1]) / 2,
    verdict: 'located' as const,
    version: '0.1.0',
  }
  return { id, timeS: 0, way: 'opened', alongM, cause: 'joint', note: '', photo: null, shown }
}

function job(...lines: (readonly Found[] | undefined)[]): Job {
  const line = (each: readonly Found[] | undefined, i: number) =>
    ({ id: String(i), ...(each && { found: each }) }) as JobLine
  return { id: 'j', name: '', createdS: 0, changedS: 0, lines: lines.map(line) }
}

describe('the window that was shown', () => {
  it('holds what lies in it, its ends included', () => {
    expect(windowHeld(found('a', 6.5, [6, 7]))).toEqual({ held: true, errorM: 0 })
    expect(windowHeld(found('a', 7, [6, 7]))!.held).toBe(true)
    expect(windowHeld(found('a', 7.001, [6, 7]))!.held).toBe(false)
    close(windowHeld(found('a', 5, [6, 7]))!.errorM!, -1.5, ROUNDING)
  })

  it('did not hold when it was opened and empty, and has no say where none was shown', () => {
    expect(windowHeld(found('a', null, [6, 7]))).toEqual({ held: false, errorM: null })
    expect(windowHeld(found('a', 6, null))).toBeNull()
  })
})

describe('the score over jobs', () => {
  it('counts windows that held of those that were put to the test, over all lines and jobs', () => {
    const score = windowScore([
      job([found('a', 6.4, [6, 7]), found('b', 3, null)], undefined, [found('c', null, [1, 2])]),
      job([found('d', 8, [6, 7])]),
    ])
    expect(score).toMatchObject({ windows: 3, held: 1 })
    close(score.promised, 2.4, ROUNDING)
    close(score.medianErrorM!, (0.1 + 1.5) / 2, ROUNDING)
  })

  it('is empty without findings, and no distance is made up', () => {
    expect(windowScore([])).toEqual({ windows: 0, held: 0, promised: 0, medianErrorM: null })
    expect(windowScore([job([found('a', null, [1, 2])])]).medianErrorM).toBeNull()
  })
})
