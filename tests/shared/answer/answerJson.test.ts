import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020'
import { describe, expect, it } from 'vitest'
import { type AnswerJson, answerJson } from '../../../shared/answer/answerJson'
import type { LocateAnswer } from '../../../shared/locate/answer'
import { brokenRules } from '../../schema/answerRules'

const schema = JSON.parse(readFileSync(join(import.meta.dirname, '../../schema/answer.schema.json'), 'utf8'))
const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true }).compile(schema)

const GRID = Array.from({ length: 101 }, (_, i) => 4.5 + i * 0.02)
const PEAK = GRID.map((alongM) => Math.max(0, 1 - Math.abs(alongM - 5.31) / 0.5) * 1.86) // a triangle of area 0.93

const evidence = (overFloorDb: number | null) => ({
  levelDbFs: -41.5,
  overFloorDb,
  bestBandHz: overFloorDb === null ? null : 398.1,
  ringRatePerS: 38,
  medianPitchHz: null,
  bubbling: 0.97,
  clipsUsed: 2,
})

const ANSWER: LocateAnswer = {
  verdict: 'located',
  reasons: [{ key: 'sheet_file_twice', values: { file: '6.wav' } }],
  sources: [
    {
      alongM: 5.31,
      windowM: [5.05, 5.62],
      windowProbability: 0.8,
      probability: 0.93,
      place: { xM: 5.31, yM: -0.2 },
      tape: { key: 'tape_past_point', values: { distance_m: 0.31, point: 6, toward: 7 } },
    },
  ],
  points: [
    { point: 6, alongM: 5, rank: 1, nearestProbability: 0.61, evidence: evidence(18), problems: [] },
    {
      point: 7,
      alongM: 6,
      rank: 2,
      nearestProbability: 0.39,
      evidence: evidence(null),
      problems: [{ key: 'file_too_large', severity: 'note', values: { size_mb: 900, most_mb: 512 } }],
    },
  ],
  clips: [
    { file: '06-on.wav', used: true, problems: [] },
    { file: '07-on.wav', used: false, problems: [{ key: 'missing_file', severity: 'spoilt', values: {} }] },
  ],
  density: { alongM: GRID, perM: PEAK },
  listenNext: [{ alongM: 5.6, offsetM: 0, expectedWindowM: 0.35 }],
  digFirst: [{ fromM: 5.05, toM: 5.62, probability: 0.8, cost: null }],
}

describe('the answer as it stands in a file', () => {
  const json = JSON.parse(JSON.stringify(answerJson(ANSWER, '1.2.3'))) as AnswerJson

  it('keeps the schema, and the rules no schema can say', () => {
    expect(validate(json), JSON.stringify(validate.errors)).toBe(true)
    expect(brokenRules(json)).toEqual([])
  })

  it('is not confirmed: no program can do that', () => {
    expect(json.confirmed).toBe(false)
  })

  it('says in words what the core said by key', () => {
    expect(json.sources[0]!.tape).toBe('0.31 m past point 6 toward point 7')
    expect(json.reasons[0]).toEqual({
      key: 'sheet_file_twice',
      values: { file: '6.wav' },
      text: 'The clip 6.wav is named in two rows.',
    })
    expect(json.clips[1]!.problems[0]).toEqual({
      key: 'missing_file',
      severity: 'spoilt',
      values: {},
      text: 'The clip is not there.',
      mend: 'Copy it into the folder, or correct its name.',
    })
  })

  it('rounds nothing and leaves nothing out', () => {
    expect(json.density).toEqual({ along_m: GRID, per_m: PEAK })
    expect(json.points[1]).toMatchObject({
      point: 7,
      along_m: 6,
      rank: 2,
      nearest_probability: 0.39,
      evidence: {
        level_dbfs: -41.5,
        over_floor_db: null,
        best_band_hz: null,
        ring_rate_per_s: 38,
        median_pitch_hz: null,
        bubbling: 0.97,
        clips_used: 2,
      },
    })
    expect(json.sources[0]).toMatchObject({ along_m: 5.31, window_m: [5.05, 5.62], xy_m: [5.31, -0.2] })
    expect(json.listen_next).toEqual([{ along_m: 5.6, offset_m: 0, expected_window_m: 0.35 }])
    expect(json.dig_first).toEqual([{ from_m: 5.05, to_m: 5.62, probability: 0.8, cost: null }])
    expect(json.version).toBe('1.2.3')
  })
})

describe('the rules no schema can say', () => {
  const right = answerJson(ANSWER, '1.2.3')
  const source = right.sources[0]!
  const [first, second] = right.points
  const cases: [string, Partial<AnswerJson>][] = [
    ['a window has its ends in order', { sources: [{ ...source, window_probability: 0.4, window_m: [6, 5] }] }],
    ['a source lies in its own window', { sources: [{ ...source, window_m: [5.4, 5.6] }] }],
    ['sources come by falling probability', { sources: [source, { ...source, probability: 0.99 }] }],
    ['ranks are 1, 2, 3 ... without a gap', { points: [first!, { ...second!, rank: 3 }] }],
    [
      'points are ranked by falling probability',
      {
        points: [
          { ...first!, rank: 2 },
          { ...second!, rank: 1 },
        ],
      },
    ],
    ['the leak is nearest to at most one point', { points: [{ ...first!, nearest_probability: 0.8 }, second!] }],
    ['a density has as many values as places', { density: { along_m: GRID, per_m: PEAK.slice(1) } }],
    ['the density adds up', { density: { along_m: GRID, per_m: PEAK.map((density) => density / 2) } }],
    ['a piece to dig has its ends in order', { dig_first: [{ from_m: 2, to_m: 1, probability: 0.5, cost: 1 }] }],
    [
      'where to listen next comes best first',
      { listen_next: [0.5, 0.3].map((width) => ({ along_m: 1, offset_m: 0, expected_window_m: width })) },
    ],
  ]
  it.each(cases)('%s', (rule, change) => {
    expect(brokenRules({ ...right, ...change }).some((broken) => broken.startsWith(rule))).toBe(true)
  })
})
