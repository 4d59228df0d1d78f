import { describe, expect, it } from 'vitest'
import { InputError } from '../../../shared/base/errors'
import { bandPassStages, type FilterStage } from '../../../shared/listen/bandPassStages'
import { close } from '../../support/close'

const RATE_HZ = 48_000

/** Gain of one biquad as the Web Audio API defines its high- and low-pass: alpha = sin(w)/2 · 10^(−Q/20). */
function gainOf({ type, frequencyHz, qDb }: FilterStage, hz: number): number {
  const w0 = (2 * Math.PI * frequencyHz) / RATE_HZ
  const alpha = Math.sin(w0) / (2 * 10 ** (qDb / 20))
  const cos = Math.cos(w0)
  const b = type === 'lowpass' ? [(1 - cos) / 2, 1 - cos, (1 - cos) / 2] : [(1 + cos) / 2, -(1 + cos), (1 + cos) / 2]
  const a = [1 + alpha, -2 * cos, 1 - alpha]
  const at = (k: readonly number[]) => {
    const w = (2 * Math.PI * hz) / RATE_HZ
    const re = k[0]! + k[1]! * Math.cos(w) + k[2]! * Math.cos(2 * w)
    const im = -k[1]! * Math.sin(w) - k[2]! * Math.sin(2 * w)
    return Math.hypot(re, im)
  }
  return at(b) / at(a)
}

const levelDb = (stages: readonly FilterStage[], hz: number) =>
  stages.reduce((sum, stage) => sum + 20 * Math.log10(gainOf(stage, hz)), 0)

describe('the band-pass for listening', () => {
  const stages = bandPassStages({ lowHz: 300, highHz: 2400 }, RATE_HZ)

  it('is at half power at both edges', () => {
    for (const edgeHz of [300, 2400]) {
      close(levelDb(stages, edgeHz), -3.0103, { abs: 0.01, because: 'the other edge is three octaves off' })
    }
  })

  it('is flat in the middle', () => {
    close(levelDb(stages, Math.sqrt(300 * 2400)), 0, { abs: 0.01, because: 'Butterworth, an octave and a half off' })
  })

  it('falls as a fourth-order Butterworth does: 10·log10(1 + 2^8) an octave out', () => {
    const expected = -10 * Math.log10(1 + 2 ** 8)
    close(levelDb(stages, 150), expected, { abs: 0.1, because: 'the bilinear transform bends little so low' })
  })

  it('keeps its edges within what the rate allows', () => {
    const top = bandPassStages({ lowHz: 1000, highHz: 8000 }, 8000)
    expect(Math.max(...top.map(({ frequencyHz }) => frequencyHz))).toBeLessThan(4000)
  })

  it('refuses edges that do not rise', () => {
    expect(() => bandPassStages({ lowHz: 500, highHz: 500 }, RATE_HZ)).toThrow(InputError)
    expect(() => bandPassStages({ lowHz: 0, highHz: 500 }, RATE_HZ)).toThrow(InputError)
  })
})
