import { describe, expect, it } from 'vitest'
import { mean } from '../../../shared/base/statistics'
import { clipPowers } from '../../../shared/synth/clipPowers'
import { drawnClip } from '../../../shared/synth/drawnEvidence'
import { drawYard } from '../../../shared/synth/drawYard'
import { familyNamed } from '../../../shared/synth/families'
import { SIGNAL_BANDS } from '../../../shared/synth/grid'
import type { ClipPlan, Yard } from '../../../shared/synth/yard'
import { close } from '../../support/close'

const drawn = drawYard({ ...familyNamed('plain')!, inletShare: 1, toldPumpShare: 1, nuisanceShare: 0, airOffAll: 1 }, 3)
/** Inlet, pump and a leak whose bubbles are much alike, nothing else; clips of ten minutes hardly scatter. */
const yard: Yard = {
  ...drawn,
  emitters: drawn.emitters.map((emitter) => ({
    ...emitter,
    bubbles: emitter.bubbles && { ...emitter.bubbles, radiusSpread: 0.1 },
  })),
}
const long = (plan: ClipPlan): ClipPlan => ({
  ...plan,
  durationS: 600,
  recorder: { ...plan.recorder, highPassHz: null },
})

describe('what a clip should show on average', () => {
  it.each(['on', 'off'])('is what long clips show with the air %s', (air) => {
    const off = yard.clips
      .filter(({ row }) => row.air === air)
      .flatMap((plan) => {
        const { bands } = drawnClip(yard, long(plan))
        const { total } = clipPowers(yard, plan)
        return SIGNAL_BANDS.map(({ midHz }, b) => {
          const band = bands.find((each) => Math.abs(each.midHz / midHz - 1) < 1e-6)!
          return band.levelDbFs! - 10 * Math.log10(total[b]!)
        })
      })
    for (const db of off) close(db, 0, { abs: 0.7, because: 'ten minutes of countable bubbles of unequal loudness' })
    close(mean(off), 0, { abs: 0.03, because: 'hundreds of levels' })
  })

  it('is the sum of its parts, and bubbles are a part of the leak', () => {
    for (const plan of yard.clips) {
      const { leak, bubbles, withAir, ambient, self, others, total } = clipPowers(yard, plan)
      expect(others).toHaveLength(2)
      for (let b = 0; b < total.length; b++) {
        const sum = leak[b]! + ambient[b]! + self[b]! + others[0]![b]! + others[1]![b]!
        close(sum / total[b]!, 1, { rel: 1e-9, because: 'exact' })
        expect(bubbles[b]).toBeLessThanOrEqual(leak[b]!)
        expect(leak[b]).toBeLessThanOrEqual(withAir[b]!)
        expect(plan.row.air === 'off' && withAir[b]! > 0).toBe(false)
      }
    }
  })
})
