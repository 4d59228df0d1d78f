import { describe, expect, it } from 'vitest'
import type { Job, JobClip } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import { readJob } from '../../../shared/job/readJob'
import type { Recording } from '../../../shared/job/recording'
import { recordingProblems } from '../../../shared/job/recordingProblems'
import { recordedClip } from '../../../shared/record/recordedClip'
import { FIRST_LINE, RECORDING } from '../../support/recordedJob'

const CLIP: JobClip = recordedClip({
  slot: { point: 4, alongM: 3, offsetM: -0.5, air: 'off', take: 2, staysPut: true, isReference: false },
  sweep: '1',
  sound: { sha256: 'b'.repeat(64), bytes: 96_044 },
  recording: { ...RECORDING, endedBy: 'unplugged' },
  contact: 'plate',
  timeS: 1_790_000_000.125,
  takenFiles: new Set(),
})

const jobOf = (clip: JobClip, removed: readonly JobClip[] = []): Job => ({
  id: 'job',
  name: 'Yard',
  createdS: 1,
  changedS: 2,
  lines: [
    {
      ...FIRST_LINE,
      sweeps: [{ id: 'sweep', name: '1', clips: [clip], problems: [] }],
      ...(removed.length > 0 && { removedClips: removed }),
    },
  ],
})

const again = (job: Job) => readJob(JSON.stringify(jobJson(job)), 'job')

describe('a job with recorded clips', () => {
  it('is read as it was written, what the phone said and what it did not say included', () => {
    expect(again(jobOf(CLIP))).toEqual(jobOf(CLIP))
    const settings = { ...RECORDING.settings, echoCancellation: null, sampleSizeBits: null, sampleRateHz: null }
    const silent = { ...CLIP, recording: { ...RECORDING, settings, device: '' } }
    expect(again(jobOf(silent))).toEqual(jobOf(silent))
  })

  it('keeps clips that were taken out, with the sweep they were in', () => {
    const removed = { ...CLIP, row: { ...CLIP.row, sweep: 'fine', take: 3 } }
    expect(again(jobOf(CLIP, [removed]))).toEqual(jobOf(CLIP, [removed]))
  })

  it.each([
    ['kept_bits', 12, /recording\.kept_bits: is 12; 16, 24 or 32/],
    ['ended_by', 'magic', /recording\.ended_by: .*one of stopped, unplugged/],
    ['device', 7, /recording\.device: is 7; a text/],
    ['sample_rate_hz', -1, /recording\.sample_rate_hz/],
    ['colour', 'red', /holds 'colour'|holds "colour"/],
  ])('is refused when %s is %s, and the place is named', (key, value, message) => {
    const json = JSON.parse(JSON.stringify(jobJson(jobOf(CLIP))))
    json.lines[0].sweeps[0].clips[0].recording[key] = value
    expect(() => readJob(json, 'job')).toThrow(message)
  })
})

describe('what a phone says of itself', () => {
  const keys = (change: Partial<Recording>, settings: Partial<Recording['settings']> = {}) =>
    recordingProblems({ ...RECORDING, ...change, settings: { ...RECORDING.settings, ...settings } }).map(
      ({ key, severity }) => `${key} ${severity}`,
    )

  it('is nothing against a clip when all is as asked, or nothing is told', () => {
    expect(keys({})).toEqual([])
    expect(keys({}, { echoCancellation: null, noiseSuppression: null, autoGainControl: null })).toEqual([])
  })

  // Names as in W3C Media Capture and Streams. [MediaCapture]
  it.each([
    ['echoCancellation', 'phone_echo_on weak'],
    ['noiseSuppression', 'phone_noise_on weak'],
    ['autoGainControl', 'phone_gain_on weak'],
  ] as const)('weighs a clip down when %s stayed on', (name, problem) => {
    expect(keys({}, { [name]: true })).toEqual([problem])
  })

  it('tells a headset by its rate, wherever it shows, and a telephone call by half of it', () => {
    expect(keys({ sampleRateHz: 16_000 }, { sampleRateHz: null })).toEqual(['phone_headset_rate note'])
    expect(keys({ sampleRateHz: 48_000 }, { sampleRateHz: 16_000 })).toEqual(['phone_headset_rate note'])
    expect(keys({ sampleRateHz: 8000 })).toEqual(['phone_headset_rate weak'])
    expect(keys({ sampleRateHz: 44_100 }, { sampleRateHz: 44_100 })).toEqual([])
  })

  it('says why a clip is shorter than wanted', () => {
    expect(keys({ endedBy: 'killed' })).toEqual(['ended_killed note'])
  })
})
