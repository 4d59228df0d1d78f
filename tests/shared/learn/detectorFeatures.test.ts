import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { readWav } from '../../../shared/audio/readWav'
import { clipEvidence } from '../../../shared/evidence/clipEvidence'
import { DETECTOR_FEATURES, detectorValues } from '../../../shared/learn/detectorFeatures'
import { timbre } from '../../../shared/spectrum/timbre'
import { close } from '../../support/close'

const clip = readWav(readFileSync('demo-audio/07-on.wav'), '07-on.wav')
const hear = (gain: number) => {
  const channels = clip.channels.map((samples) => samples.map((sample) => gain * sample))
  return detectorValues({
    evidence: clipEvidence({ ...clip, channels }),
    timbre: timbre(channels[0]!, clip.sampleRateHz),
  })
}

it('measures every feature of a clip, each under a name of its own', () => {
  const values = hear(1)
  expect(new Set(DETECTOR_FEATURES.map(({ id }) => id)).size).toBe(DETECTOR_FEATURES.length)
  expect(values.every((value) => value === null || Number.isFinite(value))).toBe(true)
  expect(values.filter((value) => value !== null).length).toBeGreaterThan(0.9 * values.length)
})

it('does not hear the gain', () => {
  const [loud, soft] = [hear(1), hear(0.25)]
  expect(soft.map((value) => value === null)).toEqual(loud.map((value) => value === null))
  for (const [i, value] of loud.entries()) {
    if (value === null) continue
    close(soft[i], value, { abs: 1e-3 * Math.max(1, Math.abs(value)), because: 'single precision of the samples' })
  }
})
