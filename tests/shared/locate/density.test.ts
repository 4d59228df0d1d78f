import { expect, it } from 'vitest'
import type { LocateAnswer } from '../../../shared/locate/answer'
import { locate } from '../../../shared/locate/locate'
import { drawnEvidence } from '../../../shared/synth/drawnEvidence'
import { drawYard } from '../../../shared/synth/drawYard'
import { familyNamed } from '../../../shared/synth/families'

/** Parts of the highest density below which a hole does not matter. */
const MATTERS = 1 / 20

it('has no hole narrower than half a spacing in its density where a fit ended beside its summit (rule 6)', () => {
  // Invented yards. Holes of 1.2, 3.3 and 9.9 nepers were there before places were fitted anew from their neighbours.
  for (const seed of ['hole-1', 'hole-8', 'hole-9']) {
    const yard = drawYard(familyNamed('coupling')!, seed)
    const { density } = locate({
      line: yard.told,
      soundings: drawnEvidence(yard).map((drawn) => ({ ...drawn, problems: [] })),
    })
    expect(deepestHole(density, yard.truth.spacingM / 4), seed).toBeLessThan(0.5)
  }
})

/** How far the density falls below the lower of the heights within reach on both sides, nepers. */
function deepestHole({ alongM, perM }: LocateAnswer['density'], reachM: number): number {
  const matters = MATTERS * Math.max(...perM)
  const highest = (fromM: number, toM: number) =>
    Math.max(...perM.filter((_, i) => alongM[i]! >= fromM && alongM[i]! <= toM))
  return Math.max(
    ...perM.map((density, i) => {
      const side = Math.min(highest(alongM[i]! - reachM, alongM[i]!), highest(alongM[i]!, alongM[i]! + reachM))
      return side < matters ? 0 : Math.log(side / density)
    }),
  )
}
