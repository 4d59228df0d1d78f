import { beforeAll, describe, expect, it } from 'vitest'
import { median, standardDeviation } from '../../../shared/base/statistics'
import { clipEvidence } from '../../../shared/evidence/clipEvidence'
import { drawnClip } from '../../../shared/synth/drawnEvidence'
import { drawYard } from '../../../shared/synth/drawYard'
import { FAMILIES } from '../../../shared/synth/families'
import { renderClip } from '../../../shared/synth/renderClip'
import { close } from '../../support/close'

const KEYS = ['levelDbFs', 'quietDbFs', 'busyDbFs', 'steadyDbFs'] as const
type Key = (typeof KEYS)[number]

const BANDS = 21

/** Heard less drawn, dB, by kind of level and band, over clips of every family; and rings a second both ways. */
const differences = Object.fromEntries(
  KEYS.map((key) => [key, Array.from({ length: BANDS }, () => [] as number[])]),
) as Record<Key, number[][]>
const rings = { heard: 0, drawn: 0 }
const oneSaysNothing: string[] = []

beforeAll(() => {
  for (const family of FAMILIES) {
    const yard = drawYard(family, 'both entries')
    const nearest = [...yard.clips]
      .filter((plan) => plan.spoil === null)
      .sort((a, b) => toLeak(a.spot.alongM) - toLeak(b.spot.alongM))
    function toLeak(alongM: number) {
      return Math.abs(alongM - (yard.truth.exitAlongM[0] ?? 0))
    }
    for (const plan of [nearest[0]!, nearest[4]!]) {
      const heard = clipEvidence(renderClip(yard, plan))
      const drawn = drawnClip(yard, plan)
      for (const [b, levels] of heard.bands.entries())
        for (const key of KEYS) {
          const heardDb = levels[key]
          const drawnDb = drawn.bands[b]![key]
          if (heardDb !== null && drawnDb !== null) differences[key][b]!.push(heardDb - drawnDb)
          else if (heardDb !== drawnDb) oneSaysNothing.push(`${family.name} ${plan.row.file} ${key} ${levels.midHz}`)
        }
      rings.heard += heard.rings.ratePerS
      rings.drawn += drawn.rings.ratePerS
    }
  }
}, 120_000)

describe('sound and drawn evidence of the same yards', () => {
  it('say nothing of the same bands', () => {
    expect(oneSaysNothing).toEqual([])
  })

  it.each(KEYS)('agree in the middle of %s, band by band', (key) => {
    for (const list of differences[key])
      if (list.length > 0)
        close(median(list), 0, { abs: 0.35, because: '40 clips that scatter by 0.3 to 0.9 dB on their own' })
  })

  it.each(KEYS)('differ in %s by no more than the noise of a clip', (key) => {
    for (const list of differences[key]) if (list.length > 0) expect(standardDeviation(list)).toBeLessThan(1.6)
  })

  it('find as many rings', () => {
    expect(rings.heard).toBeGreaterThan(20)
    close(rings.drawn / rings.heard, 1, { abs: 0.3, because: 'odds fitted on other yards, rounded' })
  })
})
