import { expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import type { Sounding } from '../../../shared/locate/answer'
import { locate } from '../../../shared/locate/locate'
import { close } from '../../support/close'
import { idealSweep, NO_LINE } from '../../support/idealSweep'

const plain = { count: 11, spacingM: 1, depthM: 0.5, leakAlongM: 4.3, overFloorDb: 25, air: ['on', 'off'] as const }

it('gives back a planted leak from levels that follow the law exactly (rules 1, 3)', () => {
  for (const leakAlongM of [3.5, 4.3, 5]) {
    const answer = locate(idealSweep({ ...plain, leakAlongM }))
    expect(answer.verdict).toBe('located')
    close(answer.sources[0]?.alongM, leakAlongM, { abs: 0.03, because: 'the priors pull a little; grid of 0.05 m' })
    expect(answer.sources[0]!.windowM[0]).toBeLessThan(leakAlongM)
    expect(answer.sources[0]!.windowM[1]).toBeGreaterThan(leakAlongM)
  }
})

it('says "no leak heard" where nothing rises over the floor, and lists no source (rule 9)', () => {
  const answer = locate(idealSweep({ ...plain, leakAlongM: null, scatterDb: 1 }))
  expect(answer.verdict).toBe('no leak heard')
  expect(answer.sources).toEqual([])
  expect(answer.points.map((point) => point.rank).sort((a, b) => a - b)).toEqual([...Array(11)].map((_, i) => i + 1))
})

it('does not say "located" for a leak past the end of the line (rule 9)', () => {
  const { line, soundings } = idealSweep({ ...plain, leakAlongM: 11.5, overFloorDb: 40 })
  expect(locate({ line, soundings }).verdict).not.toBe('located')
})

it('pays no heed to the order of the rows (rule 12)', () => {
  const { line, soundings } = idealSweep({ ...plain, gainSdDb: 2.5, scatterDb: 1, seed: 5 })
  const shuffled = new Random(9).shuffled(soundings)
  const a = locate({ line, soundings })
  const b = locate({ line, soundings: shuffled })
  expect(b.sources).toEqual(a.sources)
  expect(b.points).toEqual(a.points)
})

it('pays no heed to one gain for all clips (rule 12)', () => {
  const { line, soundings } = idealSweep({ ...plain, gainSdDb: 2.5, scatterDb: 1, seed: 6 })
  const louder = soundings.map((sounding) => raised(sounding, 17))
  const a = locate({ line, soundings })
  const b = locate({ line, soundings: louder })
  close(b.sources[0]?.alongM, a.sources[0]!.alongM, { abs: 0.005, because: 'the fit stops within 0.03 nepers' })
  expect(b.points.map((point) => point.point)).toEqual(a.points.map((point) => point.point))
})

it('mirrors its answer when the line is told from the other end (rule 12)', () => {
  const { line, soundings } = idealSweep({ ...plain, gainSdDb: 2.5, scatterDb: 1, seed: 7 })
  const mirrored = soundings.map((sounding) => ({
    ...sounding,
    row: { ...sounding.row, alongM: line.lengthM! - sounding.row.alongM },
  }))
  const a = locate({ line, soundings })
  const b = locate({ line, soundings: mirrored })
  expect(b.verdict).toBe(a.verdict)
  close(line.lengthM! - b.sources[0]!.alongM, a.sources[0]!.alongM, {
    abs: 0.01,
    because: 'grid and stopping of the fit',
  })
})

it('has a density that integrates to the expected number of sources (rule 8)', () => {
  const { density, sources } = locate(idealSweep({ ...plain, gainSdDb: 2.5, scatterDb: 1, seed: 8 }))
  const step = density.alongM[1]! - density.alongM[0]!
  expect(step).toBeLessThanOrEqual(plain.spacingM / 20 + 1e-9)
  const total = density.perM.reduce(
    (sum, perM, i) => sum + perM * (i % (density.perM.length - 1) === 0 ? 0.5 : 1) * step,
    0,
  )
  close(total, sources[0]!.probability, { abs: 0.01, because: 'the ends are near nought' })
})

it('sets a spoilt clip aside, names it and stands on the rest (rule 1)', () => {
  const { line, soundings } = idealSweep({ ...plain, air: ['on'] })
  const spoilt = soundings.map((sounding) =>
    sounding.row.point === 6
      ? { ...raised(sounding, 40), problems: [{ key: 'clipped', severity: 'spoilt' as const, values: {} }] }
      : sounding,
  )
  const answer = locate({ line, soundings: spoilt })
  expect(answer.clips.filter((clip) => !clip.used).map((clip) => clip.file)).toEqual(['06-on.wav'])
  close(answer.sources[0]?.alongM, 4.3, {
    abs: 0.25,
    because: 'the nearest flank is missing: a quarter of the spacing',
  })
  expect(answer.sources[0]!.windowM[0]).toBeLessThan(4.3)
  expect(answer.sources[0]!.windowM[1]).toBeGreaterThan(4.3)
})

it('is unsure with fewer than three usable points, ranks them and says what to record (rule 9)', () => {
  const { line, soundings } = idealSweep(plain)
  const answer = locate({ line, soundings: soundings.filter(({ row }) => row.point === 5 || row.point === 9) })
  expect(answer.verdict).toBe('unsure')
  expect(answer.points.map((point) => [point.point, point.rank])).toEqual([
    [5, 1],
    [9, 2],
  ])
  expect(answer.reasons[0]?.key).toBe('reason_too_few_points')
})

it('answers without any usable clip', () => {
  const { soundings } = idealSweep(plain)
  const missing = soundings.map((sounding) => ({
    ...sounding,
    evidence: null,
    problems: [{ key: 'missing_file', severity: 'spoilt' as const, values: {} }],
  }))
  const answer = locate({ line: NO_LINE, soundings: missing })
  expect(answer.verdict).toBe('unsure')
  expect(answer.points).toHaveLength(11)
  expect(answer.clips.every((clip) => !clip.used)).toBe(true)
})

it('widens its window with more noise, on average (seeds 1 to 4) (rule 6)', () => {
  const width = (scatterDb: number, gainSdDb: number) =>
    [1, 2, 3, 4].reduce((sum, seed) => {
      const source = locate(idealSweep({ ...plain, scatterDb, gainSdDb, seed })).sources[0]!
      return sum + source.windowM[1] - source.windowM[0]
    }, 0)
  expect(width(2.5, 4)).toBeGreaterThan(width(0.5, 1))
})

it('is hardly moved by a far point (rule 5)', () => {
  const { line, soundings } = idealSweep({ ...plain, scatterDb: 1, gainSdDb: 2, seed: 11 })
  const near = soundings.filter(({ row }) => row.point !== 11)
  const a = locate({ line, soundings }).sources[0]!
  const b = locate({ line, soundings: near }).sources[0]!
  close(b.alongM, a.alongM, { abs: 0.1, because: 'a tenth of the spacing; point 11 is 5.7 m away' })
})

function raised(sounding: Sounding, byDb: number): Sounding {
  const bands = sounding.evidence!.bands.map((band) => ({
    ...band,
    levelDbFs: band.levelDbFs! + byDb,
    quietDbFs: band.quietDbFs! + byDb,
    busyDbFs: band.busyDbFs! + byDb,
    steadyDbFs: band.steadyDbFs! + byDb,
  }))
  return { ...sounding, evidence: { ...sounding.evidence!, bands } }
}

it('counts places with the air on, not clips: points in one place or with the air off make no third (rule 9)', () => {
  const { line, soundings } = idealSweep(plain)
  const here = soundings.map((sounding) => ({ ...sounding, row: { ...sounding.row, alongM: 2 } }))
  const silent = soundings.filter(({ row }) => row.air === 'off')
  for (const heard of [here, silent]) {
    const answer = locate({ line, soundings: heard })
    expect(answer.reasons.map(({ key }) => key)).toEqual(['reason_too_few_points'])
    expect(answer.sources).toEqual([])
  }
})

it('finds the same place when the line goes on for half a kilometre without points', () => {
  const { line, soundings } = idealSweep({ ...plain, gainSdDb: 2, scatterDb: 1, seed: 12 })
  const short = locate({ line, soundings })
  const long = locate({ line: { ...line, lengthM: 500 }, soundings })
  close(long.sources[0]?.alongM, short.sources[0]!.alongM, { abs: 0.1, because: 'only the prior of the place differs' })
  expect(long.density.alongM[1]! - long.density.alongM[0]!).toBeLessThanOrEqual(plain.spacingM / 20 + 1e-9)
})

it('answers for points a centimetre apart on a line of ten kilometres, on a grid of some thousands', () => {
  const { line, soundings } = idealSweep(plain)
  const crowded = soundings.map((sounding) => ({
    ...sounding,
    row: { ...sounding.row, alongM: sounding.row.point === 11 ? 10_000 : sounding.row.point / 100 },
  }))
  const answer = locate({ line: { ...line, lengthM: null }, soundings: crowded })
  expect(answer.points).toHaveLength(11)
  expect(answer.density.alongM.length).toBeLessThanOrEqual(21_000)
})
