import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { mean, standardDeviation } from '../../../shared/base/statistics'
import { minnaertPitchHz } from '../../../shared/bubbles/minnaert'
import {
  type BubbleTrain,
  drawBubbles,
  slugDuty,
  slugGate,
  trainCovariance,
  trainPsd,
} from '../../../shared/synth/bubbleTrain'
import { type GridBand, SIGNAL_BANDS, totalPower } from '../../../shared/synth/grid'
import { bubbleEnergyAt, pitchStep } from '../../../shared/synth/ringEnergy'
import { close } from '../../support/close'

const TRAIN: BubbleTrain = {
  ratePerS: 20,
  arrival: 'broken',
  medianRadiusM: 0.003,
  radiusSpread: 0.3,
  excitationSdDb: 4,
  amplitude: 1,
}

const gapsOf = (times: Float64Array) => Array.from(times.subarray(1), (t, i) => t - times[i]!)

describe('bubbles of a broken place', () => {
  const rings = drawBubbles(TRAIN, 500, new Random('bubbles 1'), null)

  it('come at the rate that was asked for', () => {
    close(rings.timeS.length / 500, 20, { rel: 0.03, because: 'Poisson: 10 000 events, sd 1 %' })
  })

  it('come at random: coefficient of variation 1, and no bubble in 0.05 s with probability exp(−1)', () => {
    const gaps = gapsOf(rings.timeS)
    close(standardDeviation(gaps) / mean(gaps), 1, { abs: 0.03, because: 'Poisson arrivals' })
    const long = gaps.filter((gap) => gap > 0.05).length / gaps.length
    close(long, Math.exp(-1), { abs: 0.015, because: 'sd √(0.37·0.63/10 000) = 0.005' })
  })

  it('ring within the pitches of 1.5 to 8 mm, 20 % down to 10 % up', () => {
    for (const pitchHz of rings.pitchHz) {
      expect(pitchHz).toBeGreaterThanOrEqual(0.8 * minnaertPitchHz(0.008))
      expect(pitchHz).toBeLessThanOrEqual(1.1 * minnaertPitchHz(0.0015))
    }
  })

  it('are the louder the larger', () => {
    const low = [...rings.amplitude].filter((_, i) => rings.pitchHz[i]! < 800)
    const high = [...rings.amplitude].filter((_, i) => rings.pitchHz[i]! > 1500)
    expect(mean(low)).toBeGreaterThan(2 * mean(high))
  })

  it('carry the power their mean spectrum says', () => {
    let energy = 0
    for (let i = 0; i < rings.timeS.length; i++) energy += rings.amplitude[i]! ** 2 / (4 * rings.decayPerS[i]!)
    close(energy / 500, totalPower(trainPsd(TRAIN)), { rel: 0.1, because: '10 000 bubbles of very unequal energy' })
  })
})

it('bubbles of a single orifice are near regular', () => {
  const rings = drawBubbles({ ...TRAIN, arrival: 'orifice' }, 200, new Random('bubbles 2'), null)
  const gaps = gapsOf(rings.timeS)
  close(standardDeviation(gaps) / mean(gaps), 0.15, { abs: 0.02, because: 'chosen variation of 0.15' })
})

it('the same seed gives the same bubbles', () => {
  const draw = () => drawBubbles(TRAIN, 10, new Random('bubbles 3'), null)
  expect(draw()).toEqual(draw())
})

describe("the covariance of a train's powers", () => {
  /** The bands round 1 kHz that three-millimetre bubbles ring in. */
  const bands = SIGNAL_BANDS.filter(({ midHz }) => midHz > 700 && midHz < 1700)
  const alike: BubbleTrain = { ...TRAIN, radiusSpread: 0, excitationSdDb: 0 }

  it.each([
    ['broken', 1],
    ['orifice', 0.15 ** 2],
  ] as const)('of a %s place is that of trains drawn one by one', (arrival, countVariance) => {
    const train: BubbleTrain = { ...TRAIN, arrival, radiusSpread: 0.2, excitationSdDb: 2 }
    const drawn = drawnCovariance(train, bands, { clips: 4000, durationS: 4 })
    const told = trainCovariance(train, bands, 4)
    for (let i = 0; i < told.length; i++) {
      const scale = Math.sqrt(
        told[Math.floor(i / bands.length) * (bands.length + 1)]! * told[(i % bands.length) * (bands.length + 1)]!,
      )
      const because = 'of 4000 clips a variance is off by 2 or 3 %; a clip cuts its first gap'
      close(drawn[i]! / scale, told[i]! / scale, { abs: 0.12, because })
    }
    expect(told[0]! * 80).toBeGreaterThan(countVariance)
  })

  it('falls as one over rate and time', () => {
    const one = trainCovariance(TRAIN, bands, 3)
    const other = trainCovariance({ ...TRAIN, ratePerS: 2 * TRAIN.ratePerS }, bands, 9)
    for (let i = 0; i < one.length; i++) close(one[i]! / other[i]!, 6, { rel: 1e-9, because: 'exact' })
  })

  it('is larger for random arrivals by what the count varies: 1 − 0.15², over rate and time', () => {
    const random = trainCovariance(alike, bands, 5)
    const regular = trainCovariance({ ...alike, arrival: 'orifice' }, bands, 5)
    for (let i = 0; i < random.length; i++)
      close(random[i]! - regular[i]!, (1 - 0.15 ** 2) / 100, { rel: 1e-9, because: 'exact: renewal-reward' })
  })
})

/** Relative covariance of the energies in bands of many clips, row-major. */
function drawnCovariance(
  train: BubbleTrain,
  bands: readonly GridBand[],
  { clips, durationS }: { readonly clips: number; readonly durationS: number },
): number[] {
  const random = new Random(`covariance ${train.arrival}`)
  const energies = Array.from({ length: clips }, () => {
    const rings = drawBubbles(train, durationS, random, null)
    return bands.map(({ firstCell: g }) => {
      let sum = 0
      for (let i = 0; i < rings.timeS.length; i++) {
        const energy = bubbleEnergyAt(pitchStep(rings.pitchHz[i]!))
        sum += rings.amplitude[i]! ** 2 * (energy[g]! + energy[g + 1]! + energy[g + 2]!)
      }
      return sum
    })
  })
  const means = bands.map((_, b) => mean(energies.map((clip) => clip[b]!)))
  return bands.flatMap((_, b) =>
    bands.map((_, c) => mean(energies.map((clip) => (clip[b]! / means[b]! - 1) * (clip[c]! / means[c]! - 1)))),
  )
}

describe('slugs', () => {
  const slugs = { shortestOnS: 1, longestOnS: 4, shortestOffS: 2, longestOffS: 8 }

  it('leave silences of 2 to 8 s', () => {
    const gate = slugGate(slugs, 600, new Random('slugs 1'))
    for (let i = 1; i < gate.length; i++) {
      const silenceS = gate[i]!.fromS - gate[i - 1]!.toS
      expect(silenceS).toBeGreaterThanOrEqual(2)
      expect(silenceS).toBeLessThanOrEqual(8)
    }
    expect(gate.length).toBeGreaterThan(40)
  })

  it('let it bubble for their share of the time, clip after clip', () => {
    let open = 0
    for (let clip = 0; clip < 800; clip++)
      for (const { fromS, toS } of slugGate(slugs, 6, new Random(`slugs 2/${clip}`))) open += toS - fromS
    close(open / (800 * 6), slugDuty(slugs), { abs: 0.03, because: '800 clips, sd 0.4/√800 = 0.014' })
  })

  it('keep all bubbles to their times', () => {
    const gate = [{ fromS: 2, toS: 3 }]
    const rings = drawBubbles(TRAIN, 6, new Random('slugs 3'), gate)
    expect(rings.timeS.length).toBeGreaterThan(5)
    for (const t of rings.timeS) expect(t >= 2 && t < 3).toBe(true)
  })
})
