import { FormatError } from '../base/errors'
import { field, type JsonObject, jsonObject, optionalNumber, placeOf, requiredNumber } from '../base/jsonFields'
import { EARLY_ENDS } from '../sweep/phoneAccount'
import { flagField, onlyKeys, textField, wordField } from './fields'
import type { MicrophoneSettings, Recording } from './recording'

const MOST_DEVICE = 500
const RATE_HZ = { low: 1, high: 10_000_000 }
const COUNT = { low: 1, high: 1000 }
const BITS = { low: 1, high: 64 }
const LENGTH_S = { low: 0, high: 1e6 }

/**
 * What a clip keeps of its recording, under `recording`.
 *
 * @returns `null` when the key is missing: the clip was imported.
 * @throws {FormatError} anything that is not as FORMAT.md of this folder says.
 */
export function readRecording(clip: JsonObject): Recording | null {
  const told = field(clip, 'recording')
  if (told === undefined) return null
  const object = jsonObject(told, clip.file, placeOf(clip, 'recording'))
  onlyKeys(object, ['device', 'sample_rate_hz', 'channels', 'kept_bits', 'settings', 'wanted_s', 'ended_by'])
  return {
    device: textField(object, 'device', MOST_DEVICE),
    sampleRateHz: requiredNumber(object, 'sample_rate_hz', RATE_HZ),
    channelCount: requiredNumber(object, 'channels', COUNT),
    keptBits: readBits(object),
    settings: readSettings(jsonObject(field(object, 'settings'), object.file, placeOf(object, 'settings'))),
    wantedS: requiredNumber(object, 'wanted_s', LENGTH_S),
    endedBy: field(object, 'ended_by') === undefined ? null : wordField(object, 'ended_by', EARLY_ENDS),
  }
}

function readBits(object: JsonObject): Recording['keptBits'] {
  const bits = requiredNumber(object, 'kept_bits', BITS)
  if (bits === 16 || bits === 24 || bits === 32) return bits
  throw new FormatError(object.file, placeOf(object, 'kept_bits'), `is ${bits}; 16, 24 or 32 is expected`)
}

function readSettings(object: JsonObject): MicrophoneSettings {
  onlyKeys(object, [...FLAGS, 'sample_rate_hz', 'sample_size_bits', 'channels'])
  const flag = (key: string) => (field(object, key) === undefined ? null : flagField(object, key))
  return {
    echoCancellation: flag('echo_cancellation'),
    noiseSuppression: flag('noise_suppression'),
    autoGainControl: flag('auto_gain_control'),
    sampleRateHz: optionalNumber(object, 'sample_rate_hz', RATE_HZ),
    sampleSizeBits: optionalNumber(object, 'sample_size_bits', BITS),
    channelCount: optionalNumber(object, 'channels', COUNT),
  }
}

const FLAGS = ['echo_cancellation', 'noise_suppression', 'auto_gain_control']
