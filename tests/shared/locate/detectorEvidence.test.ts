import { describe, expect, it } from 'vitest'
import type { Detected } from '../../../shared/evidence/detected'
import type { Sounding } from '../../../shared/locate/answer'
import { logDetectorLikelihood } from '../../../shared/locate/detectorEvidence'
import { locate } from '../../../shared/locate/locate'
import type { SettingDown } from '../../../shared/locate/settingDown'
import { close } from '../../support/close'
import { idealSweep } from '../../support/idealSweep'

const settings = (nepers: readonly (number | null)[]) =>
  nepers.map((detectedNepers) => ({ detectedNepers })) as unknown as SettingDown[]
const over = (...db: number[]) => [Float64Array.from(db)]

describe('what a detector said', () => {
  it('is nothing without a detector, and without a leak', () => {
    expect(logDetectorLikelihood(settings([null, null]), over(20, 0))).toBe(0)
    expect(logDetectorLikelihood(settings([3, -3]), [])).toBe(0)
  })

  /** What a clip of a loud leak adds: its word over what one in so many clips says without a leak too, by a weight of 0.3. */
  const added = (said: number, oddShare: number) =>
    0.3 * Math.log(Math.exp(said) / (1 - oddShare + oddShare * Math.exp(said)))

  it('counts in part where a leak is loud, and hardly where it is far under the floor (closed form)', () => {
    for (const said of [2, -2]) {
      close(logDetectorLikelihood(settings([said]), over(60)), added(said, 0.1), { abs: 1e-9, because: 'as heard' })
    }
    close(logDetectorLikelihood(settings([2]), over(-60)), 0, { abs: 1e-9, because: 'such a leak is not heard' })
  })

  it('says no more than 4 nepers a clip, whatever its model was told, and little where air passes below', () => {
    const because = 'cut at 4 nepers'
    close(logDetectorLikelihood(settings([1e6]), over(60)), added(4, 0.1), { abs: 1e-9, because })
    close(logDetectorLikelihood(settings([4]), over(60), [true]), added(4, 0.5), { abs: 1e-9, because })
  })

  it('with two leaks asks whether either is heard', () => {
    const both = [Float64Array.of(2), Float64Array.of(2)]
    const heard = 1 - 0.5 * 0.5
    const ratio = Math.exp(2) / (0.9 + 0.1 * Math.exp(2))
    close(logDetectorLikelihood(settings([2]), both), 0.3 * Math.log(heard * ratio + 1 - heard), {
      abs: 1e-12,
      because: 'each is heard in half of the cases at 2 dB',
    })
  })
})

describe('an answer with a detector (rule 15)', () => {
  const sweep = {
    count: 9,
    spacingM: 1,
    depthM: 0.5,
    leakAlongM: 3.3,
    overFloorDb: 12,
    air: ['on'] as const,
    scatterDb: 1.5,
    seed: 3,
  }
  const { line, soundings } = idealSweep(sweep)
  const heard = (nepersAt: (alongM: number) => number, told: Partial<Detected> = {}): Sounding[] =>
    soundings.map((sounding) => ({
      ...sounding,
      detected: {
        nepers: nepersAt(sounding.row.alongM),
        probability: 0.5,
        trust: 1,
        isNewDevice: false,
        isNewCover: false,
        ...told,
      },
    }))
  const near = (alongM: number) => (Math.abs(alongM - 3.3) < 1.5 ? 4 : -1)
  const keys = (given: Sounding[]) => locate({ line, soundings: given }).reasons.map(({ key }) => key)

  it('is surer where it speaks for the place and less sure where it speaks against', () => {
    const [without, withIt, against] = [soundings, heard(near), heard(() => -3)].map((given) =>
      locate({ line, soundings: given }),
    )
    const probability = (answer: typeof without) => answer!.sources[0]?.probability ?? 0
    expect(probability(withIt)).toBeGreaterThan(probability(without))
    expect(probability(against)).toBeLessThan(probability(without))
    expect(withIt!.detector!.supportNepers).toBeGreaterThan(0)
  })

  it('says what it weighed, and of what it never heard the like; without one it says nothing', () => {
    expect(keys(heard(near))).toContain('reason_detector_for')
    expect(keys(heard(() => -3)).concat('')).not.toContain('reason_detector_for')
    expect(keys(heard(near))).not.toContain('reason_detector_unheard')
    expect(keys(heard(near, { isNewDevice: true, trust: 0.5 }))).toContain('reason_detector_unheard')
    expect(keys(soundings).filter((key) => key.startsWith('reason_detector'))).toEqual([])
    expect(locate({ line, soundings }).detector).toBeNull()
  })

  it('is as without one where its word counts nothing', () => {
    const [without, withIt] = [soundings, heard(() => 0, { trust: 0 })].map((given) =>
      locate({ line, soundings: given }),
    )
    close(withIt!.sources[0]!.alongM, without!.sources[0]!.alongM, { abs: 1e-12, because: 'ln 1 is added' })
  })
})
