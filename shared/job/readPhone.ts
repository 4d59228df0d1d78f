import { field, type JsonObject, jsonObject, optionalNumber, placeOf } from '../base/jsonFields'
import { EARLY_ENDS, PROCESSING } from '../sweep/phoneAccount'
import type { SweepRow } from '../sweep/sweep'
import { onlyKeys, wordField, wordList } from './fields'

const RATE_HZ = { low: 1, high: 10_000_000 }

/**
 * What an imported sheet told of the phone, under `phone`.
 *
 * @returns Nothing when the key is missing.
 * @throws {FormatError} anything that is not as FORMAT.md of this folder says.
 */
export function readPhone(clip: JsonObject): Pick<SweepRow, 'phone'> {
  const told = field(clip, 'phone')
  if (told === undefined) return {}
  const object = jsonObject(told, clip.file, placeOf(clip, 'phone'))
  onlyKeys(object, ['processing', 'device_hz', 'ended_by'])
  const processing = wordList(object, 'processing', PROCESSING)
  const deviceHz = optionalNumber(object, 'device_hz', RATE_HZ)
  const endedBy = field(object, 'ended_by') === undefined ? null : wordField(object, 'ended_by', EARLY_ENDS)
  return { phone: { processing, deviceHz, endedBy } }
}
