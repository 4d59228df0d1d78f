import { field, type JsonObject, unknownFields } from '../base/jsonFields'
import { objectList, onlyKeys, textField } from './fields'
import { type KeptApart, MOST_KEPT_APART } from './keptApart'

/** @returns None when the key is not there. @throws {FormatError} */
export function readKeptApart(object: JsonObject): KeptApart[] {
  if (field(object, 'kept_apart') === undefined) return []
  return objectList(object, 'kept_apart', MOST_KEPT_APART).map((entry) => {
    onlyKeys(entry, ['place', 'value'])
    return { place: textField(entry, 'place', 2000), value: unknownFields(entry, ['place']).value ?? null }
  })
}
