import { describe, expect, it } from 'vitest'
import { locateMix } from '../support/locateMix'

/**
 * A short set of what `npm run bench:mixes` tries: real bubbly water (Debian packages, see tests/support/realSounds)
 * through soil by the published laws, over real backgrounds. Levels are over the floor of nine clips in ten, at the
 * nearest point, in the best one-third-octave band.
 */
describe('sweeps mixed from real sounds', () => {
  it.each([1, 3, 6, 12, 17, 21])(
    'are located within half a spacing at 12 dB over the floor (seed %i)',
    async (seed) => {
      const { answer, errorSpacings, mix } = await locateMix(seed, 12)
      expect(answer.verdict, mix.name).toBe('located')
      expect(errorSpacings).toBeLessThanOrEqual(0.5)
    },
  )

  it.each([2, 9])('are located within a spacing, if at all, at 0 dB (seed %i)', async (seed) => {
    const { answer, errorSpacings } = await locateMix(seed, 0)
    if (answer.verdict === 'located') expect(errorSpacings).toBeLessThanOrEqual(1)
    expect(['located', 'unsure', 'no leak heard']).toContain(answer.verdict)
  })

  it.each([4, 10, 19])('are never located at 10 dB under the floor (seed %i)', async (seed) => {
    const { answer } = await locateMix(seed, -10)
    expect(answer.verdict).not.toBe('located')
  })
})
