import { describe, expect, it } from 'vitest'
import { bassPower } from '../../../../shared/audio/quality/bassPower'
import { clipScan } from '../../../../shared/audio/quality/clipScan'
import { gainRiding } from '../../../../shared/audio/quality/gainRiding'
import { knocks } from '../../../../shared/audio/quality/knocks'
import { mainsHum } from '../../../../shared/audio/quality/mainsHum'
import { sharpEdge } from '../../../../shared/audio/quality/sharpEdge'
import { voiceShare } from '../../../../shared/audio/quality/voiceShare'
import { windRumble } from '../../../../shared/audio/quality/windRumble'
import { knock, laid, noise, speech } from '../sounds'

describe('of nothing, and of silence, nothing is said', () => {
  it.each([0, 100, 480, 48_000, 192_000])('%i samples', (length) => {
    const samples = new Float32Array(length)
    const scan = clipScan(samples, 48_000)
    const bass = bassPower(scan)
    expect(gainRiding(scan)).toEqual({ dips: 0, chances: 0, dipDb: 0 })
    expect(knocks(scan, bass)).toEqual({ count: 0, share: 0 })
    expect(mainsHum(scan)).toBeNull()
    expect(sharpEdge(samples, 48_000)).toBeNull()
    expect(voiceShare(scan)).toBe(0)
    expect(windRumble(scan, bass)).toBeNull()
  })
})

describe('knocks', () => {
  const heard = (samples: Float32Array) => {
    const scan = clipScan(samples, 48_000)
    return knocks(scan, bassPower(scan))
  }
  it('two close together count as one, two apart as two', () => {
    const ground = noise('ground', 0.001, 4)
    expect(heard(laid(ground, knock(), [1, 1.06], 1)).count).toBe(1)
    expect(heard(laid(ground, knock(), [1, 1.5], 1)).count).toBe(2)
  })
  it('what goes on for longer than a third of a second is none', () => {
    const ground = noise('ground', 0.001, 4)
    const long = Array.from({ length: 14 }, (_, i) => 1 + 0.05 * i)
    expect(heard(laid(ground, knock(), long, 1)).count).toBe(0)
  })
})

describe('a voice', () => {
  it('is found by its share at any gain', () => {
    const shares = [1e-6, 1, 100].map((gain) =>
      voiceShare(
        clipScan(
          speech(6).map((x) => x * gain),
          48_000,
        ),
      ),
    )
    expect(shares[0]).toBeGreaterThan(0.2)
    for (const share of shares) expect(Math.abs(share - shares[0]!)).toBeLessThan(0.02)
  })
})
