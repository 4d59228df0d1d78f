import { FormatError } from '../base/errors'
import {
  checkedNumber,
  field,
  type JsonObject,
  jsonObject,
  optionalNumber,
  placeOf,
  requiredNumber,
} from '../base/jsonFields'
import { shown } from '../base/shown'
import type { SketchPlace } from '../line/line'
import { flagField, onlyKeys, textField, wordField } from './fields'
import { MOST_END_NAME, ROUTE_WAYS, type Site, type SitePhoto } from './site'

const PLACE_M = { low: -100_000, high: 100_000 }
const SNAP_DEG = { low: 0, high: 180, aboveLow: true }
const TURN_DEG = { low: -180, high: 180, aboveLow: true }
const BYTES = { low: 0, high: 1e12 }
const SIDE_PX = { low: 1, high: 100_000 }
const M_PER_PX = { low: 0, high: 1000, aboveLow: true }

/**
 * What was told of a line's surroundings, under `site`.
 *
 * @returns `null` when the key is missing.
 * @throws {FormatError} anything that is not as FORMAT.md of this folder says.
 */
export function readSite(line: JsonObject): Site | null {
  const told = field(line, 'site')
  if (told === undefined) return null
  const object = jsonObject(told, line.file, placeOf(line, 'site'))
  onlyKeys(object, ['start_name', 'end_name', 'route', 'start_at', 'snap_deg', 'photo'])
  return {
    startName: textField(object, 'start_name', MOST_END_NAME),
    endName: textField(object, 'end_name', MOST_END_NAME),
    routeWay: field(object, 'route') === undefined ? null : wordField(object, 'route', ROUTE_WAYS),
    startAt: field(object, 'start_at') === undefined ? null : readPlace(object, 'start_at'),
    snapDeg: optionalNumber(object, 'snap_deg', SNAP_DEG),
    photo: readPhoto(object),
  }
}

function readPhoto(site: JsonObject): SitePhoto | null {
  const told = field(site, 'photo')
  if (told === undefined) return null
  const object = jsonObject(told, site.file, placeOf(site, 'photo'))
  onlyKeys(object, ['sha256', 'bytes', 'width_px', 'height_px', 'm_per_px', 'scale_told', 'centre', 'turn_deg'])
  const sha256 = textField(object, 'sha256', 64)
  if (!/^[0-9a-f]{64}$/.test(sha256)) {
    const mend = `is ${shown(sha256)}; 64 hexadecimal digits are expected`
    throw new FormatError(object.file, placeOf(object, 'sha256'), mend)
  }
  const turnDeg = optionalNumber(object, 'turn_deg', TURN_DEG)
  return {
    sha256,
    bytes: requiredNumber(object, 'bytes', BYTES),
    widthPx: requiredNumber(object, 'width_px', SIDE_PX),
    heightPx: requiredNumber(object, 'height_px', SIDE_PX),
    mPerPx: requiredNumber(object, 'm_per_px', M_PER_PX),
    scaleTold: flagField(object, 'scale_told'),
    centre: readPlace(object, 'centre'),
    ...(turnDeg !== null && { turnDeg }),
  }
}

function readPlace(object: JsonObject, key: string): SketchPlace {
  const told = field(object, key)
  const place = placeOf(object, key)
  if (!Array.isArray(told) || told.length !== 2) {
    throw new FormatError(object.file, place, `is ${shown(told)}; two numbers [x, y] are expected`)
  }
  const [xM, yM] = told.map((value, i) => checkedNumber(value, object.file, `${place}[${i}]`, PLACE_M))
  return { xM: xM!, yM: yM! }
}
