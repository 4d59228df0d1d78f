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

  it('counts for half where a leak is loud, and hardly where it is far under the floor', () => {
    close(logDetectorLikelihood(settings([2]), over(40)), 1, { abs: 1e-6, because: 'half of 2 nepers' })
    close(logDetectorLikelihood(settings([2]), over(-40)), 0, { abs: 1e-6, because: 'such a leak is not heard' })
    close(logDetectorLikelihood(settings([-2]), over(40)), -1, { abs: 1e-6, because: 'half of 2 nepers' })
  })

  it('says no more than 4 nepers a clip, whatever its model was told, and a quarter where air passes below', () => {
    close(logDetectorLikelihood(settings([1e6]), over(40)), 2, { abs: 1e-6, because: 'half of 4 nepers' })
    close(logDetectorLikelihood(settings([4]), over(40), [true]), 0.5, { abs: 1e-6, because: 'an eighth of 4' })
  })

  it('with two leaks asks whether either is heard', () => {
    const both = [Float64Array.of(2), Float64Array.of(2)]
    const share = 1 - 0.5 * 0.5
    close(logDetectorLikelihood(settings([2]), both), 0.5 * Math.log(share * Math.exp(2) + 1 - share), {
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
    overFloorDb: 8,
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
  const near = (alongM: number) => (Math.abs(alongM - 3.3) < 1 ? 3 : -3)
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
