import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import type { HeardBlock } from '../../../shared/record/settling'
import { judgeTapTest } from '../../../shared/record/tapTest'
import { close } from '../../support/close'

/** Six seconds of 20 ms blocks of quiet, with taps of this peak that ring on for 60 ms. */
function tapped(peaks: readonly number[], quiet = 0.001, seed = 'taps'): HeardBlock[] {
  const random = Random.named(seed, String(peaks))
  return Array.from({ length: 300 }, (_, i) => {
    const tap = peaks.findIndex((_peak, n) => i >= 50 + 80 * n && i < 53 + 80 * n)
    const ring = tap < 0 ? 0 : peaks[tap]! / 3 ** (i - 50 - 80 * tap)
    const peak = Math.max(quiet * (0.7 + 0.6 * random.uniform()), ring)
    return { atS: (i + 1) / 50, durationS: 0.02, power: peak ** 2 / 10, peak }
  })
}

describe('the tap test', () => {
  it('hears the ground microphone when its taps come louder, by as much as is said', () => {
    const test = judgeTapTest({ microphone: tapped([0.5, 0.6, 0.55]), phone: tapped([0.05, 0.055, 0.06]) })
    expect(test).toMatchObject({ verdict: 'ground microphone', microphoneTaps: 3, phoneTaps: 3 })
    close(test.differenceDb, 20, { abs: 0.01, because: '0.55 over 0.055 is a factor of ten: 20 dB' })
  })

  it('hears the phone when its own taps come louder: turned round, the judgement turns round', () => {
    const [loud, faint] = [tapped([0.9, 0.8, 0.9]), tapped([0.06, 0.07, 0.05])]
    expect(judgeTapTest({ microphone: faint, phone: loud }).verdict).toBe('phone')
    expect(judgeTapTest({ microphone: loud, phone: faint }).verdict).toBe('ground microphone')
  })

  it('is sure as well when only one of them is heard at all', () => {
    expect(judgeTapTest({ microphone: tapped([0.5, 0.5, 0.5]), phone: tapped([]) })).toEqual({
      verdict: 'ground microphone',
      microphoneTaps: 3,
      phoneTaps: 0,
      differenceDb: null,
    })
    expect(judgeTapTest({ microphone: tapped([]), phone: tapped([0.5, 0.5]) }).verdict).toBe('phone')
  })

  it('says nothing came through in silence, in dead silence, and before anything was heard', () => {
    expect(judgeTapTest({ microphone: tapped([]), phone: tapped([]) }).verdict).toBe('nothing')
    expect(judgeTapTest({ microphone: tapped([], 0), phone: tapped([], 0) }).verdict).toBe('nothing')
    expect(judgeTapTest({ microphone: [], phone: [] }).verdict).toBe('nothing')
  })

  it('is unclear when both are about as loud, or only single taps came', () => {
    expect(judgeTapTest({ microphone: tapped([0.5, 0.5]), phone: tapped([0.3, 0.3]) }).verdict).toBe('unclear')
    expect(judgeTapTest({ microphone: tapped([0.5]), phone: tapped([]) }).verdict).toBe('unclear')
    expect(judgeTapTest({ microphone: tapped([0.1, 0.1]), phone: tapped([0.9]) }).verdict).toBe('unclear')
  })

  it('does not take a loud yard for taps', () => {
    expect(judgeTapTest({ microphone: tapped([], 0.3), phone: tapped([], 0.3) }).verdict).toBe('nothing')
    expect(judgeTapTest({ microphone: tapped([0.9, 0.9], 0.01), phone: tapped([], 0.01) }).verdict).toBe(
      'ground microphone',
    )
  })

  it('does not depend on the gain', () => {
    for (const gain of [0.1, 1]) {
      const input = {
        microphone: tapped([0.9, 0.8, 0.9], 0.0001 * gain),
        phone: tapped([0.2, 0.2, 0.2], 0.0001 * gain),
      }
      expect(judgeTapTest(input).verdict).toBe('ground microphone')
    }
  })
})
