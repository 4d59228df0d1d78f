import { describe, expect, it } from 'vitest'
import { parabolicPeak } from '../../../shared/spectrum/parabolicPeak'
import { powerSpectrum } from '../../../shared/spectrum/powerSpectrum'
import { close } from '../../support/close'
import { sine } from './signals'

describe('parabolicPeak', () => {
  it('puts -6, 0, -4 dB at +0.1 bin and +0.05 dB', () => {
    const peak = parabolicPeak(-6, 0, -4)
    close(peak?.offsetBins, 0.1, { abs: 1e-12, because: 'worked by hand' })
    close(peak?.level, 0.05, { abs: 1e-12, because: 'worked by hand' })
  })

  it('finds any parabola again', () => {
    for (const top of [-0.5, -0.2, 0, 0.3, 0.49]) {
      const at = (x: number) => 7 - 3 * (x - top) ** 2
      const peak = parabolicPeak(at(-1), at(0), at(1))
      close(peak?.offsetBins, top, { abs: 1e-12, because: 'three points fix a parabola' })
      close(peak?.level, 7, { abs: 1e-12, because: 'three points fix a parabola' })
    }
  })

  it('finds the pitch of a tone between the bins of a Hann spectrum within 0.06 bin', () => {
    for (const offset of [0.1, 0.25, 0.4]) {
      const levels = powerSpectrum(sine(100 + offset, 1024, 1024)).map((p) => 10 * Math.log10(p))
      const peak = parabolicPeak(levels[99]!, levels[100]!, levels[101]!)
      close(peak?.offsetBins, offset, { abs: 0.06, because: 'the top of a Hann lobe in dB is nearly a parabola' })
    }
  })

  it('finds no top on a slope, a flat or in a valley', () => {
    expect(parabolicPeak(1, 2, 3)).toBeNull()
    expect(parabolicPeak(1, 1, 1)).toBeNull()
    expect(parabolicPeak(3, 1, 2)).toBeNull()
  })
})
