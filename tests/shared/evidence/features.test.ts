import { expect, it } from 'vitest'
import type { ClipEvidence } from '../../../shared/evidence/evidence'
import { BAND_FEATURES, CLIP_FEATURES } from '../../../shared/evidence/features'
import { THIRD_OCTAVE_BANDS } from '../../../shared/spectrum/thirdOctaveBands'
import { close } from '../../support/close'

const NO_RINGS = {
  ratePerS: 2,
  medianPitchHz: null,
  pitchSpreadOctaves: null,
  medianDecayS: null,
  tonality: null,
  medianStrengthDb: null,
  medianRadiusM: null,
  assumedPressurePa: 101_325,
  burstRatePerS: 3,
  ringShare: null,
  regularity: null,
  slugRateHz: null,
}

/** A clip whose bands all read `levelDbFs`, quiet 2 dB below and busy 4 dB above; bands from `silentFrom` on say nothing. */
function evidenceOf(levelDbFs: number, silentFrom = THIRD_OCTAVE_BANDS.length): ClipEvidence {
  const bands = THIRD_OCTAVE_BANDS.map(({ midHz }, i) =>
    i < silentFrom
      ? { midHz, levelDbFs, quietDbFs: levelDbFs - 2, busyDbFs: levelDbFs + 4, steadyDbFs: levelDbFs }
      : { midHz, levelDbFs: null, quietDbFs: null, busyDbFs: null, steadyDbFs: null },
  )
  return {
    durationS: 6,
    sampleRateHz: 16_000,
    channels: 1,
    bands,
    rings: NO_RINGS,
    ringList: [],
    bubbling: 0.1,
    problems: [],
  }
}

const measured = (id: string, evidence: ClipEvidence) =>
  [...CLIP_FEATURES, ...BAND_FEATURES].find((feature) => feature.id === id)!.of(evidence)

it('names bands as the trade does, by the nominal mid-band frequencies of IEC 61260-1 and ISO 266', () => {
  // Nominal, not exact: the 160 Hz band has its middle at 158.489 Hz. [IEC61260] [ISO266]
  const names = '63 80 100 125 160 200 250 315 400 500 630 800 1000 1250 1600 2000 2500 3150 4000 5000 6300'
  const levels = BAND_FEATURES.filter(({ id }) => id.endsWith('_level_dbfs'))
  expect(levels.map(({ id }) => id)).toEqual(names.split(' ').map((name) => `band_${name}_hz_level_dbfs`))
  expect(BAND_FEATURES).toHaveLength(3 * 21)
})

it('has each id once, in snake_case with its unit at the end', () => {
  const ends: Record<string, RegExp> = {
    '': /(?<!_(?:hz|s|db|dbfs|m))$/,
    dBFS: /_dbfs$/,
    dB: /_db$/,
    '/s': /_per_s$/,
    Hz: /_hz$/,
    oct: /_octaves$/,
    s: /(?<!_per)_s$/,
    m: /_m$/,
  }
  const all = [...CLIP_FEATURES, ...BAND_FEATURES]
  expect(new Set(all.map(({ id }) => id)).size).toBe(all.length)
  for (const { id, unit, meaning, heading } of all) {
    expect(id).toMatch(/^[a-z][a-z0-9]*(?:_[a-z0-9]+)*$/)
    expect(ends[unit], `${id} has the unit ${unit}`).toBeDefined()
    expect(id).toMatch(ends[unit]!)
    expect(heading).not.toBe('')
    expect(meaning).toMatch(/^[A-Z].*\.$/)
  }
})

it('gives the levels of each band, and nothing where the clip cannot say', () => {
  const evidence = evidenceOf(-50, 20)
  expect(measured('band_160_hz_level_dbfs', evidence)).toBe(-50)
  expect(measured('band_5000_hz_quiet_dbfs', evidence)).toBe(-52)
  expect(measured('band_5000_hz_busy_dbfs', evidence)).toBe(-46)
  expect(measured('band_6300_hz_level_dbfs', evidence)).toBeNull()
})

it('adds up powers: 15 bands from 100 Hz to 2.5 kHz are 11.76 dB over one, 4 from 3.15 kHz on 6.02 dB', () => {
  const evidence = evidenceOf(-50)
  close(measured('level_dbfs', evidence), -50 + 10 * Math.log10(15), { abs: 1e-9, because: 'sum of equal powers' })
  close(measured('airborne_dbfs', evidence), -50 + 10 * Math.log10(4), { abs: 1e-9, because: 'sum of equal powers' })
  close(measured('gurgle_db', evidence), 6, { abs: 1e-9, because: 'busy 4 dB over, quiet 2 dB under' })
  expect(measured('airborne_dbfs', evidenceOf(-50, 15))).toBeNull()
})

it('keeps every number of a clip within the range it promises', () => {
  for (const { id, range, of } of [...CLIP_FEATURES, ...BAND_FEATURES]) {
    const value = of(evidenceOf(-50))
    if (value === null) continue
    expect(value, id).toBeGreaterThanOrEqual(range[0] ?? Number.NEGATIVE_INFINITY)
    expect(value, id).toBeLessThanOrEqual(range[1] ?? Number.POSITIVE_INFINITY)
  }
})
