import { FormatError } from './errors'
import { shown } from './shown'

/** One object of a JSON file, with the names that messages need. */
export interface JsonObject {
  readonly file: string
  /** Where in the file: `stretches[2]`; empty for the file as a whole. */
  readonly place: string
  readonly fields: Readonly<Record<string, unknown>>
}

export interface NumberLimits {
  readonly low: number
  readonly high: number
  /** Also refuse `low` itself. */
  readonly aboveLow?: boolean
}

/** Looks at a value as an object. @throws {FormatError} anything else. */
export function jsonObject(value: unknown, file: string, place: string): JsonObject {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new FormatError(file, place, `is ${shown(value)}; an object in braces { } is expected`)
  }
  return { file, place, fields: value as Record<string, unknown> }
}

/** The value under an own key, `undefined` when there is none or it is null. */
export function field(object: JsonObject, key: string): unknown {
  return Object.hasOwn(object.fields, key) ? (object.fields[key] ?? undefined) : undefined
}

/** Where a key stands, for messages. */
export function placeOf(object: JsonObject, key: string): string {
  return object.place === '' ? key : `${object.place}.${key}`
}

/**
 * A number that may be missing.
 *
 * @returns `null` when the key is not there or null; never −0.
 * @throws {FormatError} text, NaN, infinities, anything outside the limits.
 */
export function optionalNumber(object: JsonObject, key: string, limits: NumberLimits): number | null {
  const value = field(object, key)
  return value === undefined ? null : checkedNumber(value, object.file, placeOf(object, key), limits)
}

/** A number that must be there. @throws {FormatError} as `optionalNumber`, and when it is missing. */
export function requiredNumber(object: JsonObject, key: string, limits: NumberLimits): number {
  const value = optionalNumber(object, key, limits)
  if (value === null) throw new FormatError(object.file, placeOf(object, key), 'is missing; write a number')
  return value
}

/** A value as a finite number within limits. @throws {FormatError} otherwise. */
export function checkedNumber(value: unknown, file: string, place: string, limits: NumberLimits): number {
  if (typeof value === 'string') {
    throw new FormatError(file, place, `is the text ${shown(value)}; write a number without quotes, like 3.5`)
  }
  if (typeof value !== 'number') throw new FormatError(file, place, `is ${shown(value)}; write a number, like 3.5`)
  if (!Number.isFinite(value)) throw new FormatError(file, place, `is ${value}; write a number, or null when unknown`)
  if (value < limits.low || value > limits.high || (limits.aboveLow && value === limits.low)) {
    const from = limits.aboveLow ? `above ${limits.low}` : `from ${limits.low}`
    throw new FormatError(file, place, `is ${value}; a number ${from} to ${limits.high} is expected`)
  }
  return value + 0
}

/**
 * A list that may be missing.
 *
 * @returns The empty list when the key is not there or null.
 * @throws {FormatError} no list; more than `most` entries.
 */
export function optionalList(object: JsonObject, key: string, most: number): readonly unknown[] {
  const value = field(object, key) ?? []
  if (!Array.isArray(value)) {
    throw new FormatError(object.file, placeOf(object, key), `is ${shown(value)}; a list in brackets [ ] is expected`)
  }
  if (value.length > most) {
    throw new FormatError(
      object.file,
      placeOf(object, key),
      `has ${value.length} entries, and at most ${most} are read; remove some`,
    )
  }
  return value
}

/** Text that must be there. @throws {FormatError} missing, or anything but text. */
export function requiredText(object: JsonObject, key: string, known: readonly string[]): string {
  const value = field(object, key)
  if (typeof value === 'string') return value
  const found = value === undefined ? 'is missing' : `is ${shown(value)}`
  throw new FormatError(object.file, placeOf(object, key), `${found}; write one of ${known.join(', ')}`)
}

/**
 * The keys that are not known, copied.
 *
 * `__proto__` is left out: kept, it would wait for the first careless assignment in any program that reads the file.
 *
 * @throws {FormatError} values that JSON cannot hold (NaN, functions), or nested more than 32 deep.
 */
export function unknownFields(object: JsonObject, known: readonly string[]): Record<string, unknown> {
  const rest = Object.entries(object.fields).filter(([key]) => !known.includes(key) && key !== '__proto__')
  return Object.fromEntries(rest.map(([key, value]) => [key, copied(value, object.file, placeOf(object, key), 0)]))
}

const MAX_DEPTH = 32 // as parseJson

function copied(value: unknown, file: string, place: string, depth: number): unknown {
  if (depth > MAX_DEPTH) throw new FormatError(file, place, `is nested more than ${MAX_DEPTH} deep; make it flatter`)
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value
  if (typeof value === 'number' && Number.isFinite(value)) return value + 0
  if (Array.isArray(value)) return value.map((entry, i) => copied(entry, file, `${place}[${i}]`, depth + 1))
  if (typeof value === 'object') {
    const entries = Object.entries(value).filter(([key]) => key !== '__proto__')
    return Object.fromEntries(entries.map(([key, entry]) => [key, copied(entry, file, `${place}.${key}`, depth + 1)]))
  }
  throw new FormatError(file, place, `is ${shown(value)}, which JSON cannot hold; remove it`)
}
