import { describe, expect, it } from 'vitest'
import { jointPlaces, type MachinePlace } from '../../../shared/opinion/jointPlaces'
import { earKey, latestOpinions } from '../../../shared/opinion/latestOpinions'
import { reviewersOf } from '../../../shared/opinion/reviewers'
import { close } from '../../support/close'
import { BASE_JOB, opinionOf } from '../../support/editedJob'

const points = [1, 2, 3, 4].map((point) => ({ point, alongM: 1.5 * point }))
const NOT_HEARD = { says: 'cannot hear it', alongM: null, windowM: null, confidence: null } as const

const grid = Array.from({ length: 61 }, (_, i) => i / 10)
const machine: MachinePlace = {
  alongM: 3.1,
  windowM: [2.9, 3.3],
  confidence: 0.7,
  density: { alongM: grid, perM: grid.map((x) => (Math.abs(x - 3.1) < 0.25 ? 1.4 : 0.02)) },
}

describe('places on one line', () => {
  it('are called by letters, persons in order of time and the machine last, and pool on its grid', () => {
    const first = opinionOf('z', { reviewer: 'Ann', timeS: 1, alongM: 3, windowM: [2, 4] })
    const second = opinionOf('a', { reviewer: 'Bo', timeS: 2, alongM: 4.6, windowM: [4, 5] })
    const joint = jointPlaces([second, first], machine, points, [0, 6])
    expect(joint.ears.map(({ letter, opinion }) => [letter, opinion?.reviewer ?? 'machine'])).toEqual([
      ['A', 'Ann'],
      ['B', 'Bo'],
      ['C', 'machine'],
    ])
    expect(joint.agreement).toMatchObject({ placed: 3, pairs: 3, samePoint: 1, sharedWindowM: null })
    expect(joint.pooled!.alongM).toBe(grid)
    let total = 0
    for (let i = 1; i < grid.length; i++) total += ((joint.pooled!.perM[i]! + joint.pooled!.perM[i - 1]!) / 2) * 0.1
    close(total, 1, { abs: 1e-9, because: 'rounding: each of the pooled is scaled to 1 by the same rule' })
  })

  it('have a grid of their own where the machine names none, and no band where nobody does', () => {
    const alone = jointPlaces([opinionOf('a')], null, points, [1, 5])
    expect([alone.pooled!.alongM[0], alone.pooled!.alongM.at(-1)]).toEqual([1, 5])
    expect(jointPlaces([opinionOf('a', NOT_HEARD)], null, points, [1, 5])).toMatchObject({ ears: [], pooled: null })
  })

  it('go on past Z', () => {
    const many = Array.from({ length: 28 }, (_, i) => opinionOf(`o${i}`, { reviewer: String(i), timeS: i }))
    expect(
      jointPlaces(many, null, points, [0, 6])
        .ears.slice(-3)
        .map(({ letter }) => letter),
    ).toEqual(['Z', 'AA', 'AB'])
  })
})

it('of each person only the newest opinion counts, and a name on another device is another person', () => {
  const opinions = [
    opinionOf('new', { timeS: 9 }),
    opinionOf('old', { timeS: 1 }),
    opinionOf('elsewhere', { timeS: 5, deviceKey: 'K' }),
  ]
  expect(latestOpinions(opinions).map(({ id }) => id)).toEqual(['elsewhere', 'new'])
  expect(earKey(opinions[0]!)).not.toBe(earKey(opinions[2]!))
})

describe('everybody who gave opinions on jobs', () => {
  const [line] = BASE_JOB.lines
  const alongs = line!.sweeps.flatMap(({ clips }) => clips.map(({ row }) => row.alongM))

  it('has a record, and a kappa with each other: 0.4 of a worked table of 50 [Cohen1960]', () => {
    // 20 both at the first point, 5 and 10 apart, 15 both hear nothing: the table of 20, 5, 10 and 15.
    const said = (place: boolean) =>
      place ? { alongM: alongs[0]!, windowM: [0, 9] as const, confidence: 0.8 } : NOT_HEARD
    const table = [
      [20, true, true],
      [5, true, false],
      [10, false, true],
      [15, false, false],
    ] as const
    const jobs = table
      .flatMap(([count, ann, bo]) => Array.from({ length: count }, () => [ann, bo] as const))
      .map(([ann, bo], i) => ({
        ...BASE_JOB,
        id: `job-${i}`,
        opinions: [
          opinionOf(`a${i}`, { reviewer: 'Ann', timeS: 1, ...said(ann) }),
          opinionOf(`b${i}`, { reviewer: 'Bo', timeS: 1, ...said(bo) }),
        ],
      }))
    const { reviewers, pairs } = reviewersOf(jobs)
    expect(reviewers.map(({ name, opinions }) => [name, opinions])).toEqual([
      ['Ann', 50],
      ['Bo', 50],
    ])
    expect(pairs).toHaveLength(1)
    expect(pairs[0]!.lines).toBe(50)
    close(pairs[0]!.kappa!, 0.4, { abs: 1e-9, because: 'rounding' })
  })

  it('is compared by the first opinion that was formed blind, and "record again" is none', () => {
    const seen = { answer: true, opinions: false, shuffled: false, heard: [] }
    const far = alongs.at(-1)!
    const jobs = [1, 2].map((n) => ({
      ...BASE_JOB,
      id: `job-${n}`,
      opinions: [
        opinionOf(`told${n}`, { reviewer: 'Ann', timeS: 1, alongM: far, windowM: [far - 1, far + 1], seen }),
        opinionOf(`blind${n}`, { reviewer: 'Ann', timeS: 2, alongM: alongs[0]! }),
        opinionOf(`b${n}`, { reviewer: 'Bo', timeS: 1, alongM: alongs[0]! }),
        opinionOf(`c${n}`, { reviewer: 'Cy', timeS: 1, ...NOT_HEARD, says: 'record again' }),
      ],
    }))
    const { pairs } = reviewersOf(jobs)
    expect(pairs).toEqual([
      { first: expect.stringContaining('Ann'), second: expect.stringContaining('Bo'), lines: 2, kappa: null },
    ])
  })
})
