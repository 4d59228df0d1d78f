import { type JsonObject, jsonObject, optionalList, placeOf, requiredNumber } from '../base/jsonFields'
import { differentIds, idField, onlyKeys, textField, wordField } from './fields'
import { MOST_SIGN_NOTE, MOST_SIGNS, SIGN_KINDS, type Sign } from './signs'

const ALONG = { low: -10_000, high: 10_000 }

/**
 * The signs pinned to a line, under `signs`.
 *
 * @returns Empty when the key is missing.
 * @throws {FormatError} anything that is no list of signs; an id twice.
 */
export function readSigns(line: JsonObject): Sign[] {
  const place = placeOf(line, 'signs')
  const signs = optionalList(line, 'signs', MOST_SIGNS).map((entry, i) =>
    readSign(jsonObject(entry, line.file, `${place}[${i}]`)),
  )
  differentIds(line, 'signs', signs)
  return signs
}

function readSign(object: JsonObject): Sign {
  onlyKeys(object, ['id', 'kind', 'along_m', 'offset_m', 'note'])
  return {
    id: idField(object),
    kind: wordField(object, 'kind', SIGN_KINDS),
    alongM: requiredNumber(object, 'along_m', ALONG),
    offsetM: requiredNumber(object, 'offset_m', ALONG),
    note: textField(object, 'note', MOST_SIGN_NOTE),
  }
}
