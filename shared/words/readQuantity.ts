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
  const feetAndInches = /^(-?)(\d+)\s*(?:ft|')\s*(\d+(?:[.,]\d+)?)\s*(?:in|")?$/i.exec(text)
  if (feetAndInches !== null) {
    const inches = readNumber(feetAndInches[3]!)!
    const metres = Number(feetAndInches[2]) * METRES_PER_FOOT + inches * METRES.in!
    return feetAndInches[1] === '-' ? -metres : metres
  }
  const [, number = '', unit = ''] = /^(.*?)\s*([a-z'"]*)$/i.exec(text) ?? []
  const value = readNumber(number)
  const perUnit = METRES[unit === '' ? units.length : unit.toLowerCase()]
  return value === null || perUnit === undefined ? null : value * perUnit
}
