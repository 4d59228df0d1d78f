import { describe, expect, it } from 'vitest'
import type { Line } from '../../../shared/line/line'
import type { Sounding } from '../../../shared/locate/answer'
import type { Facts } from '../../../shared/locate/facts'
import { fitModel } from '../../../shared/locate/fitModel'
import { locate } from '../../../shared/locate/locate'
import { pointEvidence } from '../../../shared/locate/pointEvidence'
import { reasonsFor } from '../../../shared/locate/reasons'
import { settingsDown, weighedBands } from '../../../shared/locate/settingsDown'
import { whatToTry } from '../../../shared/locate/whatToTry'
import { wordsOf } from '../../../shared/words/sentence'
import { close } from '../../support/close'
import { idealSweep } from '../../support/idealSweep'

const sweep = { count: 7, spacingM: 1, depthM: 0.5, leakAlongM: 3, overFloorDb: 25, air: ['on', 'off'] as const }

describe('the reasons of a place', () => {
  const { soundings, line } = idealSweep(sweep)
  const ringing = soundings.map((sounding) =>
    withRings(sounding, sounding.row.air === 'on' ? ([0, 0, 3, 38, 5, 0, 0][sounding.row.point - 1] ?? 0) : 0),
  )
  const coupled = ringing.map((sounding) =>
    sounding.row.point === 3 && sounding.row.air === 'off'
      ? { ...sounding, problems: [{ key: 'clipped', severity: 'spoilt' as const, values: {} }] }
      : sounding,
  )
  const answer = locate({ line, soundings: coupled })
  const reason = (key: string) => answer.reasons.find((each) => each.key === key)

  it('name the bands that fall off on both sides, and how much toward each neighbour', () => {
    const values = reason('reason_falls_evenly')?.values
    expect([values?.['left'], values?.['point'], values?.['right']]).toEqual([3, 4, 5])
    expect(values?.['low_band_hz']).toBeLessThan(values?.['high_band_hz'] as number)
    close(values?.['left_db'] as number, values?.['right_db'] as number, {
      abs: 1,
      because: 'the leak lies right below; only point 3 has lost its air-off clip',
    })
    expect(wordsOf(reason('reason_falls_evenly')!).text).toMatch(
      /^Bands \d+ Hz to \d+ Hz fall off evenly on both sides of point 4: [\d.]+ dB lower at point 3, /,
    )
  })

  it('compare the rings with the neighbours, not with the farthest point', () => {
    expect(reason('reason_rings_both_sides')?.values).toEqual({
      point: 4,
      rate_per_s: 38,
      other: 3,
      other_rate_per_s: 3,
      third: 5,
      third_rate_per_s: 5,
    })
  })

  it('name a clip near the place that was set aside', () => {
    expect(reason('reason_clip_set_aside')?.values).toEqual({ file: '03-off.wav', point: 3, clips: 1 })
  })
})

describe('what to try after no leak was heard', () => {
  const { soundings, line } = idealSweep({ ...sweep, leakAlongM: null, scatterDb: 1, seed: 4 })

  it('begins with what the sweep shows to be missing, and more air comes after that (rule 14)', () => {
    const windy = [{ key: 'windy', severity: 'note' as const, values: {} }]
    const short = soundings
      .filter(({ row }) => row.air === 'on')
      .map((sounding) => ({ ...sounding, evidence: { ...sounding.evidence!, durationS: 3, problems: windy } }))
    const facts = factsOf({ ...line, depthM: 0.3, airInletM: 0 }, short)
    expect(reasonsFor(facts, 'no leak heard').map(({ key }) => key)).toEqual([
      'reason_loudest_is_little',
      'reason_not_heard_is_not_tight',
      'next_try_air_passes',
      'next_try_longer',
      'next_try_closer',
      'next_try_quieter',
      'next_try_air_off',
      'next_try_more_air',
      'next_try_either_end',
    ])
    expect(whatToTry(facts)[0]?.values).toEqual({ point: 1, distance_m: 0 })
  })

  it('does not ask for what was done, and asks for the other end where an inlet at this one hisses (rule 14)', () => {
    const hissing = idealSweep({ ...sweep, leakAlongM: 0 })
    const facts = factsOf({ ...hissing.line, airInletM: 0 }, hissing.soundings)
    expect(whatToTry(facts).map(({ key }) => key)).toEqual([
      'next_try_other_end',
      'next_try_more_air',
      'next_try_air_reaches',
    ])
  })

  it('says that not heard is not tight (rule 14)', () => {
    expect(wordsOf({ key: 'reason_not_heard_is_not_tight', values: {} }).text).toBe(
      'Not heard is not tight: the pressure test decides.',
    )
  })
})

/** What the advice after silence looks at; it never asks for the fit. */
function factsOf(line: Line, soundings: readonly Sounding[]): Facts {
  const settings = settingsDown(soundings, line, ['1'])
  const model = fitModel(
    settings,
    weighedBands(soundings[0]!.evidence!).map((band) => band.midHz),
    1,
  )
  const seen = {
    line,
    untoldInletM: null,
    soundings,
    model,
    points: pointEvidence(soundings),
    range: [0, 6] as const,
    spacingM: 1,
  }
  return seen as unknown as Facts
}

function withRings(sounding: Sounding, ratePerS: number): Sounding {
  const evidence = sounding.evidence!
  return { ...sounding, evidence: { ...evidence, rings: { ...evidence.rings, ratePerS } } }
}
