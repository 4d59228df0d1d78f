import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readWav } from '../../../shared/audio/readWav'
import { writeWav } from '../../../shared/audio/writeWav'
import { Random } from '../../../shared/base/random'
import { losslessClip } from '../../../shared/record/losslessClip'

const whole = fc.array(fc.integer({ min: -32_768, max: 32_767 }), { minLength: 1, maxLength: 200 })

/** As one browser turns captured numbers into samples: positive ones times the 32-bit float nearest to 1/32 767. */
const asBrowser = (steps: readonly number[]) =>
  Float32Array.from(steps, (step) => (step > 0 ? step * Math.fround(1 / 32_767) : step / 32_768))

/** Whole numbers in the data of the file that comes out. */
function writtenSteps(channels: readonly Float32Array[]): { bits: number; steps: number[][] } {
  const { clip, encoding, bits } = losslessClip(channels, 44_100)
  const read = readWav(writeWav(clip, { encoding }), '')
  expect(read.encoding.bits).toBe(bits)
  return { bits, steps: read.channels.map((samples) => [...samples].map((sample) => sample * 2 ** (bits - 1))) }
}

describe('the depth that a recording is kept at', () => {
  it('is 16 bits for 16-bit capture, and the numbers are those that were captured, however they were scaled (seed 5)', () => {
    fc.assert(
      fc.property(whole, (some) => {
        const steps = [...some, 1000] // a few steps near full scale are the same float either way
        const even = Float32Array.from(steps, (step) => step / 32_768)
        for (const samples of [even, asBrowser(steps)]) {
          expect(writtenSteps([samples])).toEqual({ bits: 16, steps: [steps.map((step) => step + 0)] })
        }
      }),
      { seed: 5 },
    )
  })

  it('is 24 bits for 24-bit capture', () => {
    const steps = [1, -1, 3, 8_388_607, -8_388_608, 4_000_001]
    expect(writtenSteps([Float32Array.from(steps, (step) => step / 2 ** 23)])).toEqual({ bits: 24, steps: [steps] })
  })

  it('is 32-bit floats for sound that was resampled on the way, bit by bit', () => {
    const random = new Random('resampled')
    const samples = Float32Array.from({ length: 1000 }, () => random.normal() * 0.1)
    const { clip, encoding, bits } = losslessClip([samples], 48_000)
    expect(bits).toBe(32)
    expect(readWav(writeWav(clip, { encoding }), '').channels[0]).toEqual(samples)
  })

  it('holds one channel when all are the same, and each when they differ', () => {
    const [one, other] = [Float32Array.of(0.5, -0.25), Float32Array.of(0.5, 0.25)]
    expect(losslessClip([one, one.slice()], 48_000).clip.channels).toEqual([one])
    expect(losslessClip([one, other], 48_000).clip.channels).toEqual([one, other])
  })

  it('does not lose samples that are beyond full scale', () => {
    const samples = Float32Array.of(0.5, 1.5, -1.25)
    const { clip, encoding, bits } = losslessClip([samples], 48_000)
    expect({ bits, read: readWav(writeWav(clip, { encoding }), '').channels[0] }).toEqual({ bits: 32, read: samples })
  })
})
