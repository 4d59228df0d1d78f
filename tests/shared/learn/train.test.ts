import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { mean } from '../../../shared/base/statistics'
import { checkExamples } from '../../../shared/learn/checkExamples'
import { classWeights } from '../../../shared/learn/classWeights'
import { crossValidate } from '../../../shared/learn/crossValidate'
import { rocArea } from '../../../shared/learn/rocArea'
import { learnScaling, scaled } from '../../../shared/learn/scaling'
import { scoreSound, trusted } from '../../../shared/learn/scoreSound'
import { splitByGroup } from '../../../shared/learn/splitByGroup'
import { train } from '../../../shared/learn/train'
import { close } from '../../support/close'
import { inventedExamples, ORDER } from './examples'

const examples = inventedExamples(12, 20)
const model = train(examples, ORDER)

const areaOf = (odds: readonly (number | null)[], of: readonly { isLeak: boolean }[]) =>
  rocArea(
    odds.map((each) => each!),
    of.map(({ isLeak }) => isLeak),
  ).area

describe('clips divided by group', () => {
  it('never have one group on both sides, and are about even', () => {
    const groups = examples.map(({ job }) => job)
    const parts = splitByGroup(groups, 5)
    for (const job of new Set(groups)) expect(new Set(parts.filter((_, i) => groups[i] === job)).size).toBe(1)
    const sizes = [0, 1, 2, 3, 4].map((part) => parts.filter((each) => each === part).length)
    expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(20)
  })

  it('do not depend on the order of the clips', () => {
    const groups = examples.map(({ job }) => job)
    const back = splitByGroup([...groups].reverse(), 5).reverse()
    expect(back).toEqual(splitByGroup(groups, 5))
  })
})

describe('cross-validation', () => {
  it('tells nothing where labels were dealt at random: half of the pairs stand the right way round', () => {
    const areas = Array.from({ length: 12 }, (_, seed) => {
      const random = new Random(`dealt ${seed}`)
      const dealt = inventedExamples(30, 20).map((example) => ({
        ...example,
        isLeak: random.chance(0.5),
        values: example.values.map((_, i) => (i < 4 ? random.normal() : 0)),
      }))
      return areaOf(
        crossValidate(dealt, { kind: 'linear', penalty: 1 }, ({ job }) => job),
        dealt,
      )
    })
    close(mean(areas), 0.5, { abs: 0.03, because: 'standard error 0.008, and what is kept back pulls the other way' })
  })

  it('does not see a job that gives its label away: every job of one class only', () => {
    const random = new Random('given away')
    const given = inventedExamples(20, 10).map((example) => {
      const job = Number(example.job.slice(4))
      const mark = new Random(`mark ${job}`).normal(0, 3)
      return {
        ...example,
        isLeak: job % 2 === 0,
        values: example.values.map((_, i) => (i === 0 ? mark : random.normal())),
      }
    })
    const odds = crossValidate(given, { kind: 'linear', penalty: 1 }, ({ job }) => job)
    const area = areaOf(odds, given)
    const careless = areaOf(
      crossValidate(given, { kind: 'linear', penalty: 1 }, ({ sha256 }) => sha256),
      given,
    )
    expect(area).toBeLessThan(careless - 0.1)
  })
})

describe('scaling', () => {
  it('stands at 0 for what is missing or never changes, and is cut at five deviations', () => {
    const scaling = learnScaling([
      [1, 7, null],
      [3, 7, null],
    ])
    expect([...scaled(scaling, [2, 7, 4])]).toEqual([0, 0, 4])
    expect([...scaled(scaling, [1e6, null, null])]).toEqual([5, 0, 0])
  })

  it('lets both classes and all their jobs count alike', () => {
    const weights = classWeights([true, true, true, false], ['a', 'a', 'b', 'c'])
    expect([...weights]).toEqual([0.5, 0.5, 1, 2])
  })
})

describe('a trained detector', () => {
  it('is the same whatever the order of the clips and however often one is given', () => {
    const again = train([...examples].reverse().concat(examples.slice(0, 5)), ORDER)
    expect(again).toEqual(model)
  })

  it('does on new jobs what its evaluation says', () => {
    const fresh = inventedExamples(20, 20, 'fresh')
    const scores = fresh.map(({ values }) => scoreSound(model, values, { device: '', cover: '' }).probability)
    const { area } = rocArea(
      scores,
      fresh.map(({ isLeak }) => isLeak),
    )
    const said = model.evaluations[0]!.area
    close(area, said.area, { abs: 3 * Math.hypot(said.standardError, 0.02), because: 'three standard errors of both' })
    expect(said.area).toBeGreaterThan(0.8)
  })

  it('says by cover and by device what it says of all', () => {
    const [byJob, byDevice] = model.evaluations
    expect(byJob!.byCover.map(({ cover }) => cover)).toEqual(['grass', 'pavers'])
    const hits = byJob!.byCover.reduce((sum, { counts }) => sum + counts.hits, 0)
    expect(hits).toBe(byJob!.atMiss.hits)
    expect(byJob!.atMiss.misses).toBeLessThanOrEqual(0.05 * model.card.leaks)
    expect(byDevice).toMatchObject({ keptApart: 'device', clips: 240 })
  })

  it('weighs less far from what it heard, and where device or cover are new, and says so', () => {
    const near = scoreSound(model, examples[0]!.values, { device: 'spike and phone', cover: 'grass' })
    expect(near).toMatchObject({ isNewDevice: false, isNewCover: false })
    const odd = examples[0]!.values.map(() => 50)
    const far = scoreSound(model, odd, { device: 'spike and phone', cover: 'grass' })
    expect(far.distance).toBeGreaterThan(far.usualDistance)
    expect(far.trust).toBeLessThan(near.trust)
    const unheard = scoreSound(model, examples[0]!.values, { device: 'a horn', cover: 'slab' })
    expect(unheard).toMatchObject({ isNewDevice: true, isNewCover: true })
    close(unheard.trust, near.trust * 0.35, { abs: 1e-12, because: 'half, and seven tenths of it' })
    expect(trusted({ probability: 0.9, trust: 0 })).toBe(0.5)
    close(trusted({ probability: 0.9, trust: 1 }), 0.9, { abs: 1e-12, because: 'rounding' })
  })
})

describe('clips that cannot teach', () => {
  it('are refused by name: one class, too few, one job, a clip with two labels, values of another list', () => {
    const leaks = examples.filter(({ isLeak }) => isLeak)
    expect(() => checkExamples(leaks)).toThrow('no clip is labelled as no leak')
    expect(() => checkExamples(examples.slice(0, 10))).toThrow('5 clips of leaks and 5 of none')
    expect(() => checkExamples(inventedExamples(1, 40))).toThrow('all clips come from one job')
    const twice = { ...examples[0]!, name: 'other.wav', isLeak: false }
    expect(() => checkExamples([...examples, twice])).toThrow(
      'job 0/clip 0.wav is labelled a leak and other.wav, the very same clip, is labelled none',
    )
    expect(() => checkExamples([{ ...examples[0]!, values: [1] }])).toThrow('measure it anew')
  })
})
