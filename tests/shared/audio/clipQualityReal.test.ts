import { describe, expect, it } from 'vitest'
import { butterworth, filterInPlace } from '../../../shared/audio/biquad'
import { clipQuality } from '../../../shared/audio/clipQuality'
import { realSound } from '../../support/realSounds'
import { CATALOGUE } from '../../support/realSounds/catalogue'
import { clipOf, quantised, rmsOf, scaled } from './sounds'

const of = (kind: string) =>
  CATALOGUE.filter((sound) => sound.set === 'short' && sound.kind === kind).map(({ name }) => name)

/** Problems beside being short, which some of these sounds are. */
const problems = (samples: Float32Array, rateHz: number) =>
  clipQuality(samples, rateHz, clipOf(samples, rateHz)).filter(({ key }) => key !== 'too_short')

describe('sounds that nobody of this project made', () => {
  it.each([...of('bubbling'), ...of('hiss'), ...of('rain')])('%s has nothing wrong with it', async (name) => {
    const { samples, sampleRateHz } = await realSound(name)
    expect(problems(samples, sampleRateHz)).toEqual([])
  })

  it.each(of('bubbling'))('%s has nothing wrong with it through soil, at −55 dBFS in 16 bits', async (name) => {
    const { samples, sampleRateHz } = await realSound(name)
    const heard = samples.slice()
    for (let pass = 0; pass < 2; pass++) filterInPlace(heard, butterworth('lowpass', 600, sampleRateHz))
    filterInPlace(heard, butterworth('highpass', 20, sampleRateHz))
    expect(problems(quantised(scaled(heard, 10 ** (-55 / 20) / rmsOf(heard)), 16), sampleRateHz)).toEqual([])
  })

  it('sentences read aloud are voices', async () => {
    for (const name of of('speech').filter((sentence) => sentence.startsWith('librivox'))) {
      const { samples, sampleRateHz } = await realSound(name)
      expect(problems(samples, sampleRateHz).map(({ key }) => key)).toEqual(['voice'])
    }
  })

  it('footsteps close by are knocks, on most floors', async () => {
    const floors = of('footstep')
    let knocked = 0
    for (const name of floors) {
      const { samples, sampleRateHz } = await realSound(name)
      if (problems(samples, sampleRateHz).some(({ key }) => key === 'knocked')) knocked++
    }
    expect(floors.length).toBeGreaterThan(10)
    expect(knocked).toBeGreaterThan(floors.length * 0.4)
  })
})
