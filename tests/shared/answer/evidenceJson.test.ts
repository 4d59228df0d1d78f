import { expect, it } from 'vitest'
import { evidenceJson } from '../../../shared/answer/evidenceJson'
import type { ClipEvidence } from '../../../shared/evidence/evidence'

const EVIDENCE: ClipEvidence = {
  durationS: 6,
  sampleRateHz: 16_000,
  channels: 1,
  bands: [{ midHz: 398.1, levelDbFs: -50, quietDbFs: -52, busyDbFs: null, steadyDbFs: -51 }],
  rings: {
    ratePerS: 12,
    medianPitchHz: 640,
    pitchSpreadOctaves: 0.4,
    medianDecayS: 0.01,
    tonality: 0.8,
    medianStrengthDb: 14,
    medianRadiusM: 0.005,
    assumedPressurePa: 101_325,
    burstRatePerS: 15,
    ringShare: 0.8,
    regularity: 0.1,
    slugRateHz: null,
  },
  ringList: [],
  bubbling: 0.9,
  problems: [],
}

it('gives the keys of the format, in full precision', () => {
  expect(evidenceJson('6.wav', EVIDENCE, [])).toEqual({
    file: '6.wav',
    duration_s: 6,
    sample_rate_hz: 16_000,
    channels: 1,
    bands: [{ mid_hz: 398.1, level_dbfs: -50, quiet_dbfs: -52, busy_dbfs: null }],
    rings: {
      rate_per_s: 12,
      median_pitch_hz: 640,
      tonality: 0.8,
      pitch_spread_octaves: 0.4,
      median_decay_s: 0.01,
      median_strength_db: 14,
      median_radius_m: 0.005,
      assumed_pressure_pa: 101_325,
      burst_rate_per_s: 15,
      ring_share: 0.8,
      regularity: 0.1,
      slug_rate_hz: null,
    },
    bubbling: 0.9,
    problems: [],
  })
})

it('is all null, with the reason, for a clip that could not be read', () => {
  const json = evidenceJson('6.wav', null, [{ key: 'unreadable', severity: 'spoilt', values: { why: 'it is empty' } }])
  expect(json).toMatchObject({ duration_s: null, bands: [], rings: null, bubbling: null })
  expect(json.problems[0]).toMatchObject({ key: 'unreadable', text: 'The clip cannot be read: it is empty.' })
})
