import type { Problem } from '../base/problem'
import type { Recording } from './recording'

/** Of a headset without a wire, and of a telephone call. [BluetoothHFP] in shared/base/sources.ts */
const HEADSET_RATE_HZ = 16_000
const PHONE_CALL_RATE_HZ = 8_000

/**
 * What a phone's own account of a recording says against it: processing that was asked off and is on, a rate that only
 * headsets and telephone calls have, an end before its time.
 *
 * A setting that the browser does not tell is not held against the clip: its sound is judged anyway.
 */
export function recordingProblems(recording: Recording): Problem[] {
  const { settings } = recording
  const rateHz = Math.min(recording.sampleRateHz, settings.sampleRateHz ?? Number.POSITIVE_INFINITY)
  return [
    settings.echoCancellation === true ? weak('phone_echo_on') : null,
    settings.noiseSuppression === true ? weak('phone_noise_on') : null,
    settings.autoGainControl === true ? weak('phone_gain_on') : null,
    rateHz <= HEADSET_RATE_HZ ? headset(rateHz) : null,
    recording.endedBy === null ? null : early(recording.endedBy),
  ].filter((problem) => problem !== null)
}

function weak(key: string): Problem {
  return { key, severity: 'weak', values: {} }
}

function headset(rateHz: number): Problem {
  return {
    key: 'phone_headset_rate',
    severity: rateHz <= PHONE_CALL_RATE_HZ ? 'weak' : 'note',
    values: { rate_hz: rateHz },
  }
}

const ENDS = {
  stopped: 'ended_stopped',
  unplugged: 'ended_unplugged',
  hidden: 'ended_hidden',
  killed: 'ended_killed',
  full: 'ended_full',
} as const

function early(endedBy: NonNullable<Recording['endedBy']>): Problem {
  return { key: ENDS[endedBy], severity: 'note', values: {} }
}
