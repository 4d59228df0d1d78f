import { readdirSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { LocateAnswer, Sounding } from '../../../shared/locate/answer'
import { locate } from '../../../shared/locate/locate'
import { rankPoints } from '../../../shared/locate/rankPoints'
import { massBetween } from '../../../shared/locate/window'
import { close } from '../../support/close'
import { idealSweep } from '../../support/idealSweep'

const plain = { count: 9, spacingM: 1, depthM: 0.5, leakAlongM: 3.3, overFloorDb: 25, air: ['on', 'off'] as const }
const LEAK_M = plain.leakAlongM

it('finds the leak over floors that differ by 16 dB from point to point, told by the air-off clips (rule 2)', () => {
  const floorRiseDb = (alongM: number) => (alongM % 2 === 0 ? 8 : -8)
  const { sources } = locate(idealSweep({ ...plain, floorRiseDb }))
  close(sources[0]?.alongM, LEAK_M, { abs: 0.1, because: 'levels follow the law exactly; the priors pull a little' })
})

it('is moved by less than a tenth of a spacing by a loud noise in one air-off clip over a floor that is the same everywhere (rule 2)', () => {
  const { line, soundings } = idealSweep({ ...plain, overFloorDb: 18, scatterDb: 0.5 })
  const noisy = soundings.map((sounding) =>
    sounding.row.point === 5 && sounding.row.air === 'off' ? withGust(sounding, 25) : sounding,
  )
  const [calm, disturbed] = [soundings, noisy].map((each) => locate({ line, soundings: each }).sources[0]!)
  close(disturbed!.alongM, calm!.alongM, { abs: 0.1, because: 'a tenth of the spacing' })
})

describe('a told sound beside the leak', () => {
  it('does not take its place where it is an inlet louder than the leak (rule 4)', () => {
    const { line, soundings } = idealSweep({ ...plain, others: [{ atM: 7, overFloorDb: 40, sounds: 'with air' }] })
    expect(loudestPoint(soundings)).toBe(8)
    const { sources } = locate({ line: { ...line, airInletM: 7 }, soundings })
    close(sources[0]?.alongM, LEAK_M, { abs: 0.2, because: 'a fifth of the spacing: the inlet has a free spectrum' })
    expect(sources).toHaveLength(1)
  })

  it('does not take its place where it is a noise that also sounds with the air off (rule 4)', () => {
    const { line, soundings } = idealSweep({ ...plain, others: [{ atM: 7, overFloorDb: 40, sounds: 'always' }] })
    expect(loudestPoint(soundings)).toBe(8)
    const noises = [{ kind: 'pump' as const, atM: 7 }]
    const { sources } = locate({ line: { ...line, noises }, soundings })
    close(sources[0]?.alongM, LEAK_M, { abs: 0.2, because: 'a fifth of the spacing: the noise has a free spectrum' })
    expect(sources).toHaveLength(1)
  })
})

it('is moved by less than a tenth of a spacing by a loud smooth noise in one clip (rule 5)', () => {
  const { line, soundings } = idealSweep({ ...plain, scatterDb: 0.5 })
  const gust = soundings.map((sounding) =>
    sounding.row.point === 7 && sounding.row.air === 'on' ? withGust(sounding, 30) : sounding,
  )
  expect(loudestPoint(gust)).toBe(7)
  const [calm, disturbed] = [soundings, gust].map((each) => locate({ line, soundings: each }).sources[0]!)
  close(disturbed!.alongM, calm!.alongM, { abs: 0.1, because: 'a tenth of the spacing' })
})

it('is surer of a faint leak where rings are heard at one point (rule 7)', () => {
  const { line, soundings } = idealSweep({ ...plain, overFloorDb: 6, scatterDb: 1, seed: 2 })
  const ringing = (ratePerS: number) =>
    locate({
      line,
      soundings: soundings.map((each) => withRings(each, each.row.file === '04-on.wav' ? ratePerS : 0)),
    })
  const [silent, ringed] = [ringing(0), ringing(10)]
  expect(expectedLeaks(ringed)).toBeGreaterThan(expectedLeaks(silent) + 0.05)
  expect(ringed.points[0]?.point).toBe(4)
})

describe('the points', () => {
  const answers = {
    located: locate(idealSweep(plain)),
    unsure: locate(idealSweep({ ...plain, leakAlongM: 8.6, overFloorDb: 35 })),
    'no leak heard': locate(idealSweep({ ...plain, leakAlongM: null, scatterDb: 1 })),
  }

  it('are ranked by the probability that the leak is nearest to each, in every verdict (rule 10)', () => {
    for (const [verdict, answer] of Object.entries(answers)) {
      expect(answer.verdict).toBe(verdict)
      expect(answer.points.map(({ rank }) => rank)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9])
      const nearest = answer.points.map(({ nearestProbability }) => nearestProbability)
      expect(nearest).toEqual([...nearest].sort((a, b) => b - a))
      const total = nearest.reduce((sum, each) => sum + each, 0)
      close(total, 1, { abs: 1e-9, because: 'the leak is nearest to some point' })
    }
  })

  it('share the density at the middles between them (rule 10)', () => {
    const { density, sources, points } = answers.located
    const fourth = points.find(({ point }) => point === 4)!
    const share = massBetween(density.alongM, density.perM, 2.5, 3.5) / sources[0]!.probability
    close(fourth.nearestProbability, share, { abs: 0.01, because: 'the density is that of the first source alone' })
  })

  it('are ranked by how far they stand over the floor where there is no density (rule 10)', () => {
    const bare = answers.located.points.map((point, i) => ({
      ...point,
      evidence: { ...point.evidence, overFloorDb: i === 5 ? 10 : i === 2 ? 7 : null },
    }))
    const [first, second, third] = rankPoints(bare, null)
    expect([first?.point, second?.point]).toEqual([bare[5]?.point, bare[2]?.point])
    close(first?.nearestProbability, 10 / (10 + 10 ** 0.7), { abs: 1e-9, because: 'in proportion to power' })
    expect(third?.nearestProbability).toBe(0)
  })
})

describe('the rules of the README', () => {
  const here = import.meta.dirname
  const readme = readFileSync(resolve(here, '../../../shared/locate/README.md'), 'utf8')
  const rules = [...readme.matchAll(/^(\d+)\. \*\*/gm)].map(([, number]) => Number(number))
  const named = readdirSync(here).flatMap((file) =>
    [...readFileSync(resolve(here, file), 'utf8').matchAll(/^ *(?:it|describe)\('.*\(rules? ([\d, ]+)\)'/gm)].flatMap(
      ([, numbers]) => numbers!.split(',').map(Number),
    ),
  )

  it('are numbered without a gap', () => {
    expect(rules.length).toBeGreaterThan(0)
    expect(rules).toEqual(rules.map((_, i) => i + 1))
  })

  it('are each named by a test, and no test names one that is not there', () => {
    expect([...new Set(named)].sort((a, b) => a - b)).toEqual(rules)
  })
})

/** The point whose air-on clip is loudest in any band that weighs. */
function loudestPoint(soundings: readonly Sounding[]): number {
  const loudest = ({ evidence }: Sounding) => Math.max(...evidence!.bands.map(({ levelDbFs }) => levelDbFs!))
  return soundings.filter(({ row }) => row.air === 'on').reduce((a, b) => (loudest(b) > loudest(a) ? b : a)).row.point
}

function expectedLeaks({ density }: LocateAnswer): number {
  return massBetween(density.alongM, density.perM, density.alongM[0]!, density.alongM.at(-1)!)
}

function withRings(sounding: Sounding, ratePerS: number): Sounding {
  const evidence = sounding.evidence!
  return { ...sounding, evidence: { ...evidence, rings: { ...evidence.rings, ratePerS } } }
}

/** Adds a noise so far over the floor at 500 Hz that falls by 3 dB an octave. */
function withGust(sounding: Sounding, overFloorDb: number): Sounding {
  const bands = sounding.evidence!.bands.map((band) => {
    const gustDb = -70 + overFloorDb - 3 * Math.log2(band.midHz / 500)
    const levelDbFs = 10 * Math.log10(10 ** (band.levelDbFs! / 10) + 10 ** (gustDb / 10))
    return { ...band, levelDbFs, quietDbFs: levelDbFs, busyDbFs: levelDbFs, steadyDbFs: levelDbFs }
  })
  return { ...sounding, evidence: { ...sounding.evidence!, bands } }
}
