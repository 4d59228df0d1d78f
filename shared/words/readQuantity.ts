import { METRES_PER_FOOT } from '../base/units'
import type { ShownUnits } from './shownUnits'

/** What somebody typed into a field for a number. */
export type ReadQuantity =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'empty' }
  | { readonly kind: 'no number' }

/** Typed behind a length, in metres. */
const METRES: Readonly<Record<string, number>> = {
  m: 1,
  cm: 0.01,
  mm: 0.001,
  ft: METRES_PER_FOOT,
  "'": METRES_PER_FOOT,
  in: METRES_PER_FOOT / 12,
  '"': METRES_PER_FOOT / 12,
}

/** Feet and inches as a tape has them: `5' 6`, `1 ft 0 1/2 in`, `8 3/4"`. */
const TAPE =
  /^(-?)(?:(\d{1,9})\s*(?:ft|')\s*)?(?:(\d{1,9}(?:[.,]\d{1,9})?)(?![\d/]))?\s*(?:(\d{1,2})\/(2|4|8|16))?\s*(in|")?$/i

/**
 * A number as a person types it: with a point or a comma, and a length with any unit behind it, feet and inches too.
 *
 * @param unit `m` for a length, which is read in the reader's unit unless another is typed; anything else is read as it
 *   stands.
 * @returns Lengths in metres.
 * @example readQuantity("5' 6\"", 'm', METRIC) // 1.6764 m
 */
export function readQuantity(text: string, unit: string, units: ShownUnits): ReadQuantity {
  const plain = text.trim().replaceAll('\u2212', '-').replaceAll('\u2019', "'").replaceAll('\u201d', '"')
  if (plain === '') return { kind: 'empty' }
  const value = unit === 'm' ? readLength(plain, units) : readNumber(plain)
  return value === null ? { kind: 'no number' } : { kind: 'number', value: value + 0 }
}

function readNumber(text: string): number | null {
  const plain = /^[+-]?\d+,\d+$/.test(text) ? text.replace(',', '.') : text
  return /^[+-]?(?:\d{1,9}\.?\d{0,12}|\.\d{1,12})$/.test(plain) ? Number(plain) : null
}

function readLength(text: string, units: ShownUnits): number | null {
  const tape = readTape(text)
  if (tape !== null) return tape
  const [, number = '', unit = ''] = /^(.*?)\s*([a-z'"]*)$/i.exec(text) ?? []
  const value = readNumber(number)
  const perUnit = METRES[unit === '' ? units.length : unit.toLowerCase()]
  return value === null || perUnit === undefined ? null : value * perUnit
}

function readTape(text: string): number | null {
  const [, sign, feet, inches, over, under, unit] = TAPE.exec(text) ?? []
  if ((inches === undefined && over === undefined) || (feet === undefined && unit === undefined)) return null
  const inchCount =
    (inches === undefined ? 0 : readNumber(inches)!) + (over === undefined ? 0 : Number(over) / Number(under))
  const metres = Number(feet ?? 0) * METRES_PER_FOOT + inchCount * METRES.in!
  return sign === '-' ? -metres : metres
}
