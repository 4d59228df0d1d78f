import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { locate } from '../../../shared/locate/locate'
import { close } from '../../support/close'
import { idealSweep } from '../../support/idealSweep'

const two = {
  count: 15,
  spacingM: 1,
  depthM: 0.6,
  leakAlongM: 3.3,
  secondLeakAlongM: 10.6,
  overFloorDb: 22,
  air: ['on', 'off'] as const,
  gainSdDb: 2,
  scatterDb: 1,
}

const placesOf = (sweep: ReturnType<typeof idealSweep>) =>
  locate(sweep)
    .sources.map(({ alongM }) => alongM)
    .sort((a, b) => a - b)

describe('two leaks', () => {
  const sweep = idealSweep({ ...two, seed: 3 })
  const answer = locate(sweep)

  it('are both listed, each in a window of its own, the likelier first (rule 13)', () => {
    expect(answer.verdict).toBe('located')
    expect(answer.sources).toHaveLength(2)
    const [first, second] = answer.sources
    expect(first!.probability).toBeGreaterThanOrEqual(second!.probability)
    expect(second!.probability).toBeGreaterThan(0.5)
    const [low, high] = [...answer.sources].sort((a, b) => a.alongM - b.alongM)
    close(low!.alongM, two.leakAlongM, { abs: 0.3, because: 'gain of 2 dB a point; a third of the spacing' })
    close(high!.alongM, two.secondLeakAlongM, { abs: 0.3, because: 'gain of 2 dB a point; a third of the spacing' })
    for (const { windowM } of answer.sources) expect(windowM[1] - windowM[0]).toBeLessThan(1)
  })

  it('share the density by their probabilities, and both windows are in the order of digging (rule 13)', () => {
    const { alongM, perM } = answer.density
    const step = alongM[1]! - alongM[0]!
    const expected = answer.sources.reduce((sum, { probability }) => sum + probability, 0)
    close(
      perM.reduce((sum, each) => sum + each * step, 0),
      expected,
      { abs: 0.02, because: 'the ends are near nought' },
    )
    const pieces = answer.digFirst.map(({ fromM }) => fromM).sort((a, b) => a - b)
    expect(pieces).toEqual(answer.sources.map(({ windowM }) => windowM[0]).sort((a, b) => a - b))
  })

  it('rank the points next to either before all others, and the reasons say so (rules 10, 13)', () => {
    const top = answer.points.slice(0, 2).map(({ alongM }) => alongM)
    expect(top.sort((a, b) => a - b)).toEqual([3, 11])
    const reason = answer.reasons.find(({ key }) => key === 'reason_second_source')
    expect(reason?.values.second_m).toBe(answer.sources[1]!.alongM)
  })

  it('pay no heed to the order of the rows (rule 12)', () => {
    const shuffled = new Random(4).shuffled(sweep.soundings)
    expect(locate({ ...sweep, soundings: shuffled }).sources).toEqual(answer.sources)
  })

  it('are mirrored when the line is told from the other end (rule 12)', () => {
    const length = sweep.line.lengthM!
    const soundings = sweep.soundings.map((sounding) => ({
      ...sounding,
      row: { ...sounding.row, alongM: length - sounding.row.alongM },
    }))
    const mirrored = placesOf({ ...sweep, soundings })
    const here = placesOf(sweep)
    close(length - mirrored[1]!, here[0]!, { abs: 0.05, because: 'the search climbs in steps of a quarter spacing' })
    close(length - mirrored[0]!, here[1]!, { abs: 0.05, because: 'the search climbs in steps of a quarter spacing' })
  })
})

it('gives no second source to one leak, however loud (seeds 1 to 3) (rule 13)', () => {
  const { secondLeakAlongM: _, ...one } = two
  for (const seed of [1, 2, 3]) {
    const answer = locate(idealSweep({ ...one, overFloorDb: 14 + 8 * seed, seed }))
    expect(answer.sources).toHaveLength(1)
    expect(answer.reasons.map(({ key }) => key)).not.toContain('reason_second_source')
  }
})
