import { type PhoneAccount, PROCESSING } from '../sweep/phoneAccount'
import type { Recording } from './recording'

/** What the phone said of itself, as far as a sheet tells it. */
export function phoneAccountOf({ settings, sampleRateHz, endedBy }: Recording): PhoneAccount {
  const isOn = {
    echo: settings.echoCancellation === true,
    noise: settings.noiseSuppression === true,
    gain: settings.autoGainControl === true,
  }
  const deviceHz = Math.min(sampleRateHz, settings.sampleRateHz ?? Number.POSITIVE_INFINITY)
  return { processing: PROCESSING.filter((what) => isOn[what]), deviceHz, endedBy }
}
