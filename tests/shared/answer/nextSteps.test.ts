import { describe, expect, it } from 'vitest'
import { type NextSteps, nextSteps } from '../../../shared/answer/nextSteps'
import type { LocateAnswer, PointAnswer } from '../../../shared/locate/answer'
import { wordsOf } from '../../../shared/words/sentence'
import { METRIC } from '../../../shared/words/shownUnits'
import { NO_LINE } from '../../support/idealSweep'

const point = (number: number, clipsUsed = 2): PointAnswer => ({
  point: number,
  alongM: number - 1,
  rank: number,
  nearestProbability: 0.1,
  evidence: {
    levelDbFs: null,
    overFloorDb: null,
    bestBandHz: null,
    ringRatePerS: null,
    medianPitchHz: null,
    bubbling: null,
    clipsUsed,
  },
  problems: [],
})

const answer: LocateAnswer = {
  verdict: 'located',
  reasons: [],
  sources: [
    {
      alongM: 5.4,
      windowM: [5, 5.9],
      windowProbability: 0.8,
      probability: 0.97,
      place: { xM: 5.4, yM: 0 },
      tape: { key: 'tape_past_point', values: { distance_m: 0.4, point: 6, toward: 7 } },
    },
  ],
  points: [point(5), point(6), point(7), point(8, 0)],
  clips: [],
  density: { alongM: [], perM: [] },
  listenNext: [{ alongM: 5.7, offsetM: 0, expectedWindowM: 0.5 }],
  digFirst: [
    { fromM: 5, toM: 5.4, probability: 0.5, cost: 20 },
    { fromM: 5.4, toM: 5.9, probability: 0.3, cost: 50 },
  ],
}

const listening = (change: Partial<LocateAnswer>) => said(nextSteps({ ...answer, ...change }, NO_LINE, METRIC).listen)
const said = (steps: NextSteps['listen']) => steps.map((step) => wordsOf(step, METRIC).text).join(' ')

describe('the next place to listen', () => {
  it('is told by tape and along, with the window now and as it is expected', () => {
    expect(listening({})).toBe(
      'Listen next 0.30 m before point 7 toward point 6 (5.70 m along): expect the window to shrink from 0.90 m to about 0.50 m.',
    )
  })

  it('is three places together where the route is unsure', () => {
    const three = [0.5, 0, -0.5].map((offsetM) => ({ alongM: 5.4, offsetM, expectedWindowM: 0.6 }))
    expect(listening({ listenNext: three })).toContain(
      'three places across the line, 0.40 m past point 6 toward point 7 (5.40 m along): 0.50 m to the left, over it, and 0.50 m to the right.',
    )
    expect(listening({ listenNext: three })).toContain(
      'With all three, expect the window to shrink from 0.90 m to about 0.60 m.',
    )
  })

  it('names a second place beyond an end, and promises nothing that is not expected', () => {
    const beyond = [8, 9].map((alongM) => ({ alongM, offsetM: 0, expectedWindowM: 1 }))
    const reasons = [{ key: 'reason_past_end', values: { share: 0.4 } }]
    expect(listening({ verdict: 'unsure', reasons, listenNext: beyond })).toBe(
      'Listen next 1.00 m past point 8, the last one (8.00 m along). Then 2.00 m past point 8, the last one (9.00 m along).',
    )
  })

  it('says when it is a point again, and whether because nothing could be used there', () => {
    expect(listening({ listenNext: [{ alongM: 6, offsetM: 0, expectedWindowM: 0.5 }] })).toMatch(
      /^Listen once more at point 7 /,
    )
    expect(listening({ listenNext: [{ alongM: 7, offsetM: 0, expectedWindowM: 0.5 }] })).toMatch(
      /^Record again at point 8 .*no clip could be used/,
    )
  })
})

describe('the pieces to dig', () => {
  it('come in their order, with tape and cost, where the leak is located', () => {
    const { dig } = nextSteps(answer, NO_LINE, METRIC)
    expect(said(dig[0]!)).toMatch(
      /^Dig first from 5\.00 m to 5\.40 m along\. .* 50 % .*begins at point 6 .*costs 20, in the unit/,
    )
    expect(said(dig[1]!)).toMatch(/^Then from 5\.40 m to 5\.90 m along: 30 %/)
  })

  it('are not told by an unsure answer', () => {
    expect(nextSteps({ ...answer, verdict: 'unsure' }, NO_LINE, METRIC).dig).toEqual([])
  })
})

it('keeps what to try apart from what was found', () => {
  const reasons = [
    { key: 'reason_not_heard_is_not_tight', values: {} },
    { key: 'next_try_more_air', values: {} },
  ]
  const { tries } = nextSteps(
    { ...answer, verdict: 'no leak heard', reasons, listenNext: [], digFirst: [] },
    NO_LINE,
    METRIC,
  )
  expect(tries.map(({ key }) => key)).toEqual(['next_try_more_air'])
})
