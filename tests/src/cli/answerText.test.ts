import { expect, it } from 'vitest'
import type { Line } from '../../../shared/line/line'
import { readLineJson } from '../../../shared/line/readLineJson'
import type { LocateAnswer, Verdict } from '../../../shared/locate/answer'
import { answerText } from '../../../src/cli/answerText'

const line: Line = readLineJson({ length_m: 4 }, 'line.json').line

function pageOf(verdict: Verdict): string {
  const answer: LocateAnswer = {
    verdict,
    reasons: [],
    sources: [
      {
        alongM: 2,
        windowM: [1, 3],
        windowProbability: 0.8,
        probability: 0.9,
        place: { xM: 2, yM: 0 },
        tape: { key: 'tape_at_point', values: { point: 3 } },
      },
    ],
    points: [],
    clips: [],
    density: { alongM: [0, 2, 4], perM: [0, 0.45, 0] },
    listenNext: [{ alongM: 2.5, offsetM: 0, expectedWindowM: 1 }],
    digFirst: [{ fromM: 1, toM: 3, probability: 0.8, cost: null }],
  }
  const sweep = { answer, line, soundings: [], problems: [] }
  return answerText(sweep, { width: 100, shades: false, units: { length: 'm', pressure: 'kPa' } })
}

it('sends nobody digging by a place that is unsure, only to listen', () => {
  expect(pageOf('located')).toContain('Dig first from 1.00 m to 3.00 m')
  expect(pageOf('located')).toContain('Call for utility marks')
  expect(pageOf('unsure')).toContain('Listen next 2.50 m from')
  expect(pageOf('unsure')).not.toMatch(/dig/i)
})
