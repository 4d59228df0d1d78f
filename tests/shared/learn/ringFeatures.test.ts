import { expect, it } from 'vitest'
import type { Ring } from '../../../shared/bubbles/ring'
import type { ClipEvidence } from '../../../shared/evidence/evidence'
import { RING_FEATURES } from '../../../shared/learn/ringFeatures'
import { close } from '../../support/close'

/** 5 s with three rings at 300 Hz that last one, two and four half turns' worth, and one at 3 kHz that is a mere knock. */
const rings: Ring[] = [
  { timeS: 0.5, pitchHz: 300, decayS: 1 / (300 * Math.PI), tonality: 0.6, strengthDb: 7 },
  { timeS: 0.9, pitchHz: 300, decayS: 4 / (300 * Math.PI), tonality: 0.8, strengthDb: 10 },
  { timeS: 2.5, pitchHz: 300, decayS: 16 / (300 * Math.PI), tonality: 0.9, strengthDb: 20 },
  { timeS: 3.5, pitchHz: 3000, decayS: 4 / (3000 * Math.PI), tonality: 0.3, strengthDb: 3 },
]
const heard = (ringList: Ring[]) => (id: string) =>
  RING_FEATURES.find((feature) => feature.id === id)!.of({ ringList, durationS: 5 } as unknown as ClipEvidence)

it('counts rings by pitch, strength, purity and how long they last, in ten seconds', () => {
  const of = heard(rings)
  const counts = {
    rings_from_250_hz: 3,
    rings_from_400_hz: 0,
    rings_from_2500_hz: 1,
    rings_over_6_db: 3,
    rings_over_9_db: 2,
    rings_over_18_db: 1,
    rings_over_tonality_50: 3,
    rings_over_tonality_85: 1,
    rings_over_quality_3: 3,
    rings_over_quality_12: 1,
  }
  for (const [name, count] of Object.entries(counts)) {
    close(of(`ln_1_plus_${name}_per_10_s`), Math.log(1 + 2 * count), { abs: 1e-12, because: 'rounding' })
  }
})

it('tells how long rings last for their pitch, and over how much of the clip there are any', () => {
  const of = heard(rings)
  close(of('ln_ring_quality'), Math.log(4), { abs: 1e-9, because: 'rounding' })
  close(of('rings_span_share'), 3 / 5, { abs: 1e-12, because: 'rounding' })
  close(of('seconds_with_rings_share'), 3 / 5, { abs: 1e-12, because: 'rounding' })
})

it('says of a clip without rings that there are none, not how they would be', () => {
  const of = heard([])
  expect(of('ln_ring_quality')).toBeNull()
  expect(of('ln_ring_quality_spread')).toBeNull()
  expect(of('rings_span_share')).toBe(0)
  expect(of('ln_1_plus_rings_from_250_hz_per_10_s')).toBe(0)
})
