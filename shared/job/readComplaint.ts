import { FormatError } from '../base/errors'
import { field, type JsonObject, jsonObject, optionalList, placeOf } from '../base/jsonFields'
import { shown } from '../base/shown'
import { type Complaint, MOST_COMPLAINT, RULED_OUT, WATER_PASSES } from './complaint'
import { onlyKeys, textField, wordField } from './fields'

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
    ruledOut: optionalList(object, 'ruled_out', RULED_OUT.length).map((entry, i) => {
      const known = RULED_OUT.find((each) => each === entry)
      if (known !== undefined) return known
      const place = `${placeOf(object, 'ruled_out')}[${i}]`
      throw new FormatError(object.file, place, `is ${shown(entry)}; one of ${RULED_OUT.join(', ')} is expected`)
    }),
    isolation: textField(object, 'isolation', MOST_COMPLAINT),
    waterPasses: field(object, 'water_passes') === undefined ? null : wordField(object, 'water_passes', WATER_PASSES),
  }
}
