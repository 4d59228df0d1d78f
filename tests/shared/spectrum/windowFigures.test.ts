import { describe, expect, it } from 'vitest'
import { overlapCorrelation, windowFigures, windowResponse } from '../../../shared/spectrum/windowFigures'
import { type WindowName, windowSamples } from '../../../shared/spectrum/windows'
import { close } from '../../support/close'

/**
 * F. J. Harris, Proc. IEEE 66, 51-83, 1978, table 1 [Harris1978], recalled to the digits he prints and worked out again from his
 * definitions to the digits below for 4096 periodic samples.
 */
const HARRIS: {
  name: WindowName
  gain: number
  enbw: number
  scallop: number
  worst: number
  sidelobe: number
  half: number
  threeQuarters: number
}[] = [
  {
    name: 'rectangular',
    gain: 1,
    enbw: 1,
    scallop: 3.922,
    worst: 3.92,
    sidelobe: -13.26,
    half: 0.5,
    threeQuarters: 0.75,
  },
  {
    name: 'hann',
    gain: 0.5,
    enbw: 1.5,
    scallop: 1.424,
    worst: 3.18,
    sidelobe: -31.47,
    half: 0.1667,
    threeQuarters: 0.6592,
  },
  {
    name: 'hamming',
    gain: 0.54,
    enbw: 1.3628,
    scallop: 1.751,
    worst: 3.1,
    sidelobe: -42.68,
    half: 0.2338,
    threeQuarters: 0.7069,
  },
  {
    name: 'blackman',
    gain: 0.42,
    enbw: 1.7268,
    scallop: 1.099,
    worst: 3.47,
    sidelobe: -58.11,
    half: 0.0896,
    threeQuarters: 0.5667,
  },
  {
    name: 'blackman-harris',
    gain: 0.3588,
    enbw: 2.0044,
    scallop: 0.826,
    worst: 3.85,
    sidelobe: -92.01,
    half: 0.0376,
    threeQuarters: 0.46,
  },
]

describe.each(HARRIS)('windowFigures of $name against Harris 1978', (row) => {
  const window = windowSamples(row.name, 4096)
  const figures = windowFigures(window)

  it('has his coherent gain and noise bandwidth', () => {
    close(figures.coherentGain, row.gain, { abs: 6e-5, because: 'four digits are given' })
    close(figures.noiseBandwidthBins, row.enbw, { abs: 6e-5, because: 'four digits are given' })
  })

  it('has his scallop loss and worst-case loss', () => {
    close(figures.scallopLossDb, row.scallop, { abs: 0.002, because: 'three digits are given' })
    close(figures.worstCaseLossDb, row.worst, { abs: 0.006, because: 'two digits are given' })
  })

  it('has his correlation at half and three quarters overlap', () => {
    close(figures.halfOverlapCorrelation, row.half, { abs: 6e-5, because: 'four digits are given' })
    close(overlapCorrelation(window, 0.75), row.threeQuarters, { abs: 6e-5, because: 'four digits are given' })
  })

  it('has his highest sidelobe', () => {
    const short = windowSamples(row.name, 512)
    const mainLobeBins = { rectangular: 1, hann: 2, hamming: 2, blackman: 3, 'blackman-harris': 4 }[row.name]
    let highest = 0
    for (let bins = mainLobeBins; bins < 20; bins += 1 / 64) highest = Math.max(highest, windowResponse(short, bins))
    const sidelobeDb = 20 * Math.log10(highest / windowResponse(short, 0))
    close(sidelobeDb, row.sidelobe, { abs: 0.05, because: 'shorter window, and sought in steps of 1/64 bin' })
  })
})

it('the noise bandwidth of Hann is exactly 1.5 bins', () => {
  close(windowFigures(windowSamples('hann', 4096)).noiseBandwidthBins, 1.5, { abs: 1e-12, because: '(3/8) / (1/2)²' })
})

it('refuses a window without weight', () => {
  expect(() => windowFigures(new Float64Array(8))).toThrow('sum to 0')
  expect(() => windowFigures(Float64Array.of(1))).toThrow('1 samples')
})
