import { describe, expect, it } from 'vitest'
import { bandsOverFloor } from '../../../shared/evidence/bandsOverFloor'
import type { ClipEvidence } from '../../../shared/evidence/evidence'
import { THIRD_OCTAVE_BANDS } from '../../../shared/spectrum/thirdOctaveBands'
import { close } from '../../support/close'

/** Evidence whose steady level is -60 dBFS but where `lifted` says otherwise; only the bands matter here. */
function clip(lifted: Record<number, number> = {}): ClipEvidence {
  const bands = THIRD_OCTAVE_BANDS.map(({ midHz, nominalHz }) => ({
    midHz,
    levelDbFs: null,
    quietDbFs: null,
    busyDbFs: null,
    steadyDbFs: lifted[nominalHz] ?? -60,
  }))
  return { bands } as unknown as ClipEvidence
}

describe('bands over the floor', () => {
  it('are told from the point itself with the air off', () => {
    const found = bandsOverFloor([clip({ 500: -48, 630: -50, 800: -55 })], [clip({ 800: -60 })], [])
    expect(found).toHaveLength(1)
    close(found[0]!.lowHz, 446.68, { rel: 1e-4, because: '10^2.65, the lower edge of the 500 Hz band' })
    close(found[0]!.highHz, 707.95, { rel: 1e-4, because: '10^2.85, the upper edge of the 630 Hz band' })
    expect(found[0]!.overFloorDb).toBe(12)
  })

  it('are told from the quiet fifth of all points where the air was never off', () => {
    const loud = clip({ 250: -40 })
    const found = bandsOverFloor([loud], [], [loud, clip(), clip(), clip(), clip({ 250: -50 })])
    expect(found.map(({ overFloorDb }) => overFloorDb)).toEqual([20])
  })

  it('stand apart where a band between them tells nothing', () => {
    expect(bandsOverFloor([clip({ 200: -50, 315: -50 })], [clip()], [])).toHaveLength(2)
  })

  it('begin at 6 dB', () => {
    expect(bandsOverFloor([clip({ 200: -54 })], [clip()], [])).toHaveLength(1)
    expect(bandsOverFloor([clip({ 200: -54.01 })], [clip()], [])).toEqual([])
  })

  it('are none without a clip', () => {
    expect(bandsOverFloor([], [clip()], [clip()])).toEqual([])
  })
})
