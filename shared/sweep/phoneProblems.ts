import type { Problem } from '../base/problem'
import type { PhoneAccount } from './phoneAccount'

/** Of a headset without a wire, and of a telephone call. [BluetoothHFP] in shared/base/sources.ts */
const HEADSET_RATE_HZ = 16_000
const PHONE_CALL_RATE_HZ = 8_000

/**
 * What a phone's own account of a recording says against it: processing that was asked off and is on, a rate that only
 * headsets and telephone calls have, an end before its time.
 *
 * A setting that the browser does not tell is not held against the clip: its sound is judged anyway.
 */
export function phoneProblems({ processing, deviceHz, endedBy }: PhoneAccount): Problem[] {
  return [
    ...processing.map((what): Problem => ({ key: STAYED_ON[what], severity: 'weak', values: {} })),
    ...(deviceHz !== null && deviceHz <= HEADSET_RATE_HZ ? [headset(deviceHz)] : []),
    ...(endedBy === null ? [] : [{ key: ENDS[endedBy], severity: 'note' as const, values: {} }]),
  ]
}

const STAYED_ON = { echo: 'phone_echo_on', noise: 'phone_noise_on', gain: 'phone_gain_on' } as const

const ENDS = {
  stopped: 'ended_stopped',
  unplugged: 'ended_unplugged',
  hidden: 'ended_hidden',
  killed: 'ended_killed',
  full: 'ended_full',
} as const

function headset(rateHz: number): Problem {
  return {
    key: 'phone_headset_rate',
    severity: rateHz <= PHONE_CALL_RATE_HZ ? 'weak' : 'note',
    values: { rate_hz: rateHz },
  }
}
