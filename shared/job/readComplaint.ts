import { field, type JsonObject, jsonObject, placeOf } from '../base/jsonFields'
import { type Complaint, MOST_COMPLAINT, RULED_OUT, WATER_PASSES } from './complaint'
import { onlyKeys, textField, wordField, wordList } from './fields'

/**
 * Complaint and isolation of a line, under `complaint`.
 *
 * @returns `null` when the key is missing.
 * @throws {FormatError} anything that is no complaint.
 */
export function readComplaint(line: JsonObject): Complaint | null {
  const told = field(line, 'complaint')
  if (told === undefined) return null
  const object = jsonObject(told, line.file, placeOf(line, 'complaint'))
  onlyKeys(object, ['said', 'ruled_out', 'isolation', 'water_passes'])
  return {
    said: textField(object, 'said', MOST_COMPLAINT),
    ruledOut: wordList(object, 'ruled_out', RULED_OUT),
    isolation: textField(object, 'isolation', MOST_COMPLAINT),
    waterPasses: field(object, 'water_passes') === undefined ? null : wordField(object, 'water_passes', WATER_PASSES),
  }
}
