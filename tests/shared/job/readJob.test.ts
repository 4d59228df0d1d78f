import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import { freshPressureTest } from '../../../shared/job/pressureTests'
import { readJob } from '../../../shared/job/readJob'
import { readLineJson } from '../../../shared/line/readLineJson'
import { readSweepCsv } from '../../../shared/sweep/readSweepCsv'

const demo = resolve(import.meta.dirname, '../../../demo-audio')
const { rows } = readSweepCsv(readFileSync(resolve(demo, 'sweep.csv'), 'utf8'), 'sweep.csv')
const { line } = readLineJson(readFileSync(resolve(demo, 'line.json'), 'utf8'), 'line.json')

const DEMO: Job = {
  id: 'job-1',
  name: 'Alder Square',
  createdS: 1_776_500_000,
  changedS: 1_776_500_000.25,
  hiddenCautions: ['pressure'],
  lines: [
    {
      id: 'line-1',
      name: 'Return line',
      line,
      problems: [{ key: 'line_path_stretched', severity: 'note', values: { path_m: 13.5, length_m: 13.4 } }],
      sweeps: [
        {
          id: 'sweep-1',
          name: '1',
          clips: rows.map((row, i) => ({
            row: { ...row, unknown: { colour: 'red' } },
            sound: i === 3 ? null : { sha256: String(i % 10).repeat(64), bytes: 160_044 },
            problems: i === 3 ? [{ key: 'missing_file', severity: 'spoilt', values: {} }] : [],
          })),
          problems: [],
        },
      ],
      confirmations: [
        {
          id: 'said-1',
          timeS: 1_776_500_100,
          says: 'not sure',
          note: 'Gurgles, but faint.\n"quoted"',
          verdict: 'located',
          alongM: 6.37,
          windowM: [6.15, 6.55],
        },
      ],
      plannedPoints: [
        { point: 1, alongM: 0, offsetM: 0 },
        { point: 7, alongM: 6.25, offsetM: -0.5 },
      ],
      signs: [{ id: 'sign-1', kind: 'sunk paver', alongM: 6.5, offsetM: 0.25, note: 'a coin fits under' }],
      site: {
        startName: 'filter room',
        endName: 'basin',
        routeWay: 'paced',
        startAt: { xM: 0.5, yM: -1 },
        snapDeg: 22.5,
        photo: {
          sha256: 'f'.repeat(64),
          bytes: 2_000_000,
          widthPx: 4000,
          heightPx: 3000,
          mPerPx: 0.005,
          scaleTold: true,
          centre: { xM: 4, yM: 3 },
        },
      },
      mend: {
        cutAtM: 6.2,
        parts: [
          { id: 'part-1', name: 'pump side', fromM: 0, toM: 6.2, testIds: ['test-1', 'test-2'] },
          { id: 'part-2', name: '', fromM: 6.2, toM: 13.4, testIds: [] },
        ],
        steps: [{ id: 'step-1', text: 'Dry fit', done: true }],
        joint: {
          adhesive: 'solvent cement',
          times: { workMin: null, pressureMin: [60, 120] },
          temperatureC: 12.5,
          startS: 1_776_501_000,
        },
        closedS: 1_776_510_000,
      },
      found: [
        {
          id: 'found-1',
          timeS: 1_776_500_900,
          way: 'opened',
          alongM: 6.41,
          cause: 'fitting',
          note: 'elbow cracked',
          photo: { sha256: 'a'.repeat(64), bytes: 1_000 },
          shown: { windowM: [6.15, 6.55], probability: 0.8, alongM: 6.37, verdict: 'located', version: '0.1.0' },
        },
        {
          id: 'found-2',
          timeS: 1_776_500_950,
          way: 'by eye',
          alongM: null,
          cause: 'not seen',
          note: '',
          photo: null,
          shown: null,
        },
      ],
      digging: {
        marks: [
          {
            id: 'mark-1',
            name: 'corner of the house',
            place: { xM: 2, yM: 3.5 },
            tapes: [
              { alongM: 1, distanceM: 3.64 },
              { alongM: 6, distanceM: 5.32 },
            ],
          },
          { id: 'mark-2', name: 'lamp post', place: { xM: 9, yM: -1 }, tapes: null },
        ],
        roundM: 8.5,
        roundCostPerM: 40,
      },
      keptAnswer: {
        timeS: 1_776_510_000,
        version: '0.1.0',
        line,
        answer: {
          verdict: 'located',
          reasons: [{ key: 'reason_air_on', values: { point: 7, name: 'x' } }],
          sources: [
            {
              alongM: 6.37,
              windowM: [6.15, 6.55],
              windowProbability: 0.8,
              probability: 0.95,
              place: { xM: 6.1, yM: 0.5 },
              tape: { key: 'tape_past_point', values: { distance_m: 0.31, point: 6, toward: 7 } },
            },
          ],
          points: [
            {
              point: 7,
              alongM: 6.3,
              rank: 1,
              nearestProbability: 0.7,
              evidence: {
                levelDbFs: -40,
                overFloorDb: 12.5,
                bestBandHz: 501.2,
                ringRatePerS: null,
                medianPitchHz: 612,
                bubbling: 0.9,
                clipsUsed: 2,
              },
              problems: [{ key: 'clipped', severity: 'weak', values: { share: 0.1 } }],
            },
          ],
          clips: [{ file: '07-on.wav', used: true, problems: [] }],
          density: { alongM: [0, 0.05], perM: [0.1, 0.2] },
          listenNext: [{ alongM: 6.4, offsetM: 0, expectedWindowM: 0.3 }],
          digFirst: [{ fromM: 6.15, toM: 6.55, probability: 0.8, cost: null }],
        },
        spectra: [{ point: 7, midHz: [100, 125.9], onDbFs: [-40, null], offDbFs: [null, -60] }],
        clips: [
          { file: '07-on.wav', sha256: 'b'.repeat(64) },
          { file: 'gone.wav', sha256: null },
        ],
      },
      complaint: { said: 'loses 2 cm a day', ruledOut: ['pump', 'basin'], isolation: 'plugs', waterPasses: 'poorly' },
      pressureTests: [
        {
          ...freshPressureTest({ id: 'test-1', createdS: 1_776_500_050, unit: 'psi' }),
          name: 'Whole line',
          clockStartS: 1_776_500_060,
          readings: [
            { id: 'r2', timeS: 60, value: 10.9, note: 'sun came out', leftOut: false },
            { id: 'r1', timeS: 0, value: 11, note: '', leftOut: true },
          ],
          startTemperatureC: 18.5,
          fittings: [{ id: 'f1', name: 'Plug at the basin', state: 'weeping', by: 'dye under water' }],
          kept: {
            timeS: 1_776_500_500,
            verdict: 'cannot tell',
            version: '0.1.0',
            judged: {
              reasons: [{ key: 'hold_too_few', values: { count: 2, needed: 6 } }],
              dropOf: 'weeping fitting',
              fallKpaPerMin: { low: 0.1, value: 0.2, high: 0.3 },
              band: [
                { timeS: 0, kpa: 75, lowKpa: 74.5, highKpa: 75.5 },
                { timeS: 60, kpa: 74, lowKpa: 73.5, highKpa: 74.5 },
              ],
            },
          },
        },
        {
          ...freshPressureTest({ id: 'test-2', createdS: 1_776_600_000, unit: 'bar', resolution: 0.02 }),
          cameUp: false,
        },
      ],
    },
  ],
}

/** The demo with one value put elsewhere: `lines.0.name`, to be read. */
const withValue = (path: string, value: unknown): unknown => {
  const fields = JSON.parse(JSON.stringify(jobJson(DEMO)))
  const steps = path.split('.')
  const last = steps.pop()!
  const parent = steps.reduce((at, step) => at[step], fields)
  if (value === undefined) delete parent[last]
  else parent[last] = value
  return fields
}
const CLIP = 'lines.0.sweeps.0.clips.2'
const CLIP_PLACE = 'lines[0].sweeps[0].clips[2]'

describe('a job', () => {
  it('comes back as it was written, as text and as data', () => {
    expect(readJob(JSON.stringify(jobJson(DEMO)), 'job.json')).toEqual(DEMO)
    expect(readJob(jobJson(DEMO), 'some other name')).toEqual(DEMO)
  })

  it('of any lengths, times and names comes back (seed 5)', () => {
    const number = fc.double({ min: -9999, max: 9999, noNaN: true }).map((value) => value + 0)
    const change = fc.record({
      name: fc.string({ maxLength: 200, unit: 'grapheme' }).filter((text) => text.length <= 200),
      changedS: number,
      alongM: number,
      note: fc.string({ maxLength: 300 }),
      timeS: fc.option(number),
    })
    fc.assert(
      fc.property(change, ({ name, changedS, alongM, note, timeS }) => {
        const first = DEMO.lines[0]!
        const sweep = first.sweeps[0]!
        const clips = sweep.clips.map((clip) => ({ ...clip, row: { ...clip.row, alongM, note, timeS } }))
        const job = { ...DEMO, name, changedS, lines: [{ ...first, sweeps: [{ ...sweep, clips }] }] }
        expect(readJob(JSON.stringify(jobJson(job)), 'job.json')).toEqual(job)
      }),
      { seed: 5, numRuns: 50 },
    )
  })

  it('of before there were points, signs and a site opens without them', () => {
    const { plannedPoints: _p, signs: _s, site: _t, complaint: _c, pressureTests: _h, ...line } = DEMO.lines[0]!
    const before = { ...DEMO, lines: [line] }
    expect(readJob(JSON.stringify(jobJson(before)), 'j')).toEqual(before)
  })

  it('from a newer version is refused with what to do', () => {
    expect(() => readJob(withValue('schema_version', 2), 'a.json')).toThrow(
      'a.json, schema_version: is 2, from a newer version of the program; open it there, or update this one',
    )
    expect(() => readJob(withValue('schema_version', undefined), 'a.json')).toThrow('is missing; this is no job')
  })

  it.each([
    ['id', 'a/b', 'id: is "a/b"; letters, digits and hyphens'],
    ['name', 7, 'name: is 7; a text is expected'],
    ['name', 'x'.repeat(201), 'name: holds 201 characters; at most 200'],
    ['changed_s', '5', 'changed_s: is the text "5"'],
    ['lines', undefined, 'lines: is missing; a list'],
    ['lines.0', [], 'lines[0]: is a list of 0; an object'],
    ['lines.0.line.length_m', -1, 'lines[0].line, length_m: is -1'],
    ['lines.0.extra', 1, 'lines[0]: holds "extra", which this version does not know'],
    ['lines.0.problems.0.severity', 'bad', 'lines[0].problems[0].severity: is "bad"; one of spoilt, weak, note'],
    ['lines.0.problems.0.values.path_m', null, 'lines[0].problems[0].values.path_m: is undefined'],
    ['lines.0.confirmations.0.says', 'maybe', 'lines[0].confirmations[0].says: is "maybe"; one of yes, no, not sure'],
    ['lines.0.confirmations.0.window_m', [1], 'lines[0].confirmations[0].window_m: is a list of 1; two numbers'],
    ['lines.0.planned_points.1.point', 1, 'lines[0].planned_points: holds point 1 twice; numbers must differ'],
    ['lines.0.planned_points.1.point', 1.5, 'lines[0].planned_points[1].point: is 1.5; a whole number'],
    ['lines.0.planned_points', {}, 'lines[0].planned_points: is an object; a list'],
    ['lines.0.signs.0.kind', 'smell', 'lines[0].signs[0].kind: is "smell"; one of wet patch, sunk paver, bubbles'],
    ['hidden_cautions', ['all'], 'hidden_cautions[0]: is "all"; one of pressure'],
    ['lines.0.complaint.ruled_out', ['moon'], 'lines[0].complaint.ruled_out[0]: is "moon"; one of pump, valves'],
    ['lines.0.pressure_tests.0.unit', 'atm', 'lines[0].pressure_tests[0].unit: is "atm"; one of psi, kPa, bar'],
    ['lines.0.pressure_tests.0.resolution', 0, 'lines[0].pressure_tests[0].resolution: is 0; a number above 0'],
    [
      'lines.0.pressure_tests.0.readings.0.value',
      '11',
      'lines[0].pressure_tests[0].readings[0].value: is the text "11"',
    ],
    ['lines.0.pressure_tests.1.came_up', 1, 'lines[0].pressure_tests[1].came_up: is 1; true or false is expected'],
    [
      'lines.0.pressure_tests.0.kept.verdict',
      'fine',
      'lines[0].pressure_tests[0].kept.verdict: is "fine"; one of holds, drops',
    ],
    ['lines.0.digging.marks.0.tapes', [{}], 'lines[0].digging.marks[0].tapes[0].along_m: is missing; write a number'],
    ['lines.0.digging.marks.1.at', [1], 'lines[0].digging.marks[1].at: is a list of 1; two numbers are expected'],
    ['lines.0.kept_answer.density.per_m', [1], 'lines[0].kept_answer.density: has lists of different lengths'],
    ['lines.0.kept_answer.verdict', 'sure', 'lines[0].kept_answer.verdict: is "sure"; one of located'],
    [
      'lines.0.pressure_tests.0.kept.judged.band.kpa',
      [],
      'lines[0].pressure_tests[0].kept.judged.band: has lists of different lengths',
    ],
    ['lines.0.signs.0.along_m', null, 'lines[0].signs[0].along_m: is missing; write a number'],
    ['lines.0.site.photo.m_per_px', 0, 'lines[0].site.photo.m_per_px: is 0; a number above 0'],
    ['lines.0.site.photo.sha256', 'F', 'lines[0].site.photo.sha256: is "F"; 64 hexadecimal digits'],
    ['lines.0.site.snap_deg', 181, 'lines[0].site.snap_deg: is 181; a number above 0'],
    ['lines.0.site.start_at', [1], 'lines[0].site.start_at: is a list of 1; two numbers [x, y]'],
    [`${CLIP}.air`, 'up', `${CLIP_PLACE}.air: is "up"; one of on, off`],
    [`${CLIP}.point`, 1.5, `${CLIP_PLACE}.point: is 1.5; a whole number`],
    [`${CLIP}.file`, '../x.wav', `${CLIP_PLACE}.file: "../x.wav" leaves the folder`],
    [`${CLIP}.sha256`, 'ABC', `${CLIP_PLACE}.sha256: is "ABC"; 64 hexadecimal digits`],
    [`${CLIP}.shared_take`, 1, `${CLIP_PLACE}.shared_take: is 1; true or false`],
  ])('with %s put to %j is refused at that place', (path, value, message) => {
    expect(() => readJob(withValue(path, value), 'j')).toThrow(`j, ${message}`)
  })

  it('with an id or a name of a sweep twice is refused', () => {
    const lines = (jobJson(DEMO).lines as unknown[]).concat(jobJson(DEMO).lines)
    expect(() => readJob(withValue('lines', lines), 'j')).toThrow('j, lines: holds the id "line-1" twice')
    const [first] = jobJson(DEMO).lines as [{ sweeps: Record<string, unknown>[] }]
    const twice = [...first.sweeps, { ...first.sweeps[0]!, id: 'sweep-2' }]
    expect(() => readJob(withValue('lines.0.sweeps', twice), 'j')).toThrow('holds two sweeps of one name')
  })
})
