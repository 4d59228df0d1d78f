import { expect, it } from 'vitest'
import type { Source } from '../../../shared/locate/answer'
import { shownWindow } from '../../../src/app/found/shownWindow'

const source = (alongM: number) =>
  ({ alongM, windowM: [alongM - 1, alongM + 1], windowProbability: 0.8 }) as unknown as Source
const answer = { verdict: 'located' as const, sources: [source(5), source(12)] }

it('a finding is judged by the window of the source named nearest to it, and an empty hole by the first', () => {
  expect(shownWindow(answer, 11, 'v')).toEqual({
    windowM: [11, 13],
    probability: 0.8,
    alongM: 12,
    verdict: 'located',
    version: 'v',
  })
  expect(shownWindow(answer, null, 'v')?.alongM).toBe(5)
})

it('no window is made up where no place was named', () => {
  expect(shownWindow(null, 5, 'v')).toBeNull()
  expect(shownWindow({ verdict: 'no leak heard', sources: [] }, 5, 'v')).toBeNull()
})
