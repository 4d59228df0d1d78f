import { FormatError } from '../base/errors'
import {
  checkedNumber,
  field,
  type JsonObject,
  jsonObject,
  type NumberLimits,
  optionalList,
  placeOf,
} from '../base/jsonFields'
import type { Problem } from '../base/problem'
import { shown } from '../base/shown'
import type { Reason } from '../locate/answer'

const MOST_PROBLEMS = 10_000
const KEYED_VALUE = { low: -1e15, high: 1e15 }
const SEVERITIES = ['spoilt', 'weak', 'note'] as const

/** Text that must be there, of at most so many characters. @throws {FormatError} anything else. */
export function textField(object: JsonObject, key: string, most: number): string {
  const value = field(object, key)
  if (typeof value !== 'string') fail(object, key, `is ${shownOrMissing(value)}; a text is expected`)
  if (value.length > most) fail(object, key, `holds ${value.length} characters; at most ${most} are read`)
  return value
}

/** One of the known words. @throws {FormatError} anything else. */
export function wordField<Word extends string>(object: JsonObject, key: string, known: readonly Word[]): Word {
  const value = field(object, key)
  const word = known.find((candidate) => candidate === value)
  if (word === undefined) fail(object, key, `is ${shownOrMissing(value)}; one of ${known.join(', ')} is expected`)
  return word
}

/**
 * A list of words, each of them known.
 *
 * @throws {FormatError} anything else, and more of them than there are.
 */
export function wordList<Word extends string>(object: JsonObject, key: string, known: readonly Word[]): Word[] {
  return optionalList(object, key, known.length).map((entry, i) => {
    const word = known.find((each) => each === entry)
    if (word !== undefined) return word
    const place = `${placeOf(object, key)}[${i}]`
    throw new FormatError(object.file, place, `is ${shown(entry)}; one of ${known.join(', ')} is expected`)
  })
}

/** An id: letters, digits and hyphens. @throws {FormatError} anything else. */
export function idField(object: JsonObject): string {
  const id = textField(object, 'id', 64)
  if (!/^[\w-]+$/.test(id)) fail(object, 'id', `is ${shown(id)}; letters, digits and hyphens are expected`)
  return id
}

/** True or false. @throws {FormatError} anything else. */
export function flagField(object: JsonObject, key: string): boolean {
  const value = field(object, key)
  if (typeof value !== 'boolean') fail(object, key, `is ${shownOrMissing(value)}; true or false is expected`)
  return value
}

/** A list of objects. @throws {FormatError} no list; more than `most`; an entry that is no object. */
export function objectList(object: JsonObject, key: string, most: number): JsonObject[] {
  if (field(object, key) === undefined) fail(object, key, 'is missing; a list in brackets [ ] is expected')
  const place = placeOf(object, key)
  return optionalList(object, key, most).map((entry, i) => jsonObject(entry, object.file, `${place}[${i}]`))
}

/** What a list of problems holds. @throws {FormatError} anything that is no problem. */
export function problemList(object: JsonObject): Problem[] {
  return objectList(object, 'problems', MOST_PROBLEMS).map((entry) => {
    onlyKeys(entry, ['key', 'severity', 'values'])
    return {
      key: textField(entry, 'key', 100),
      severity: wordField(entry, 'severity', SEVERITIES),
      values: keyedValues(entry),
    }
  })
}

/** Keys of shared/words with their values. @throws {FormatError} anything else. */
export function keyedList(object: JsonObject, key: string, most: number): Reason[] {
  return objectList(object, key, most).map(readKeyed)
}

/** One key of shared/words with its values. @throws {FormatError} anything else. */
export function readKeyed(object: JsonObject): Reason {
  onlyKeys(object, ['key', 'values'])
  return { key: textField(object, 'key', 100), values: keyedValues(object) }
}

/** The values of a sentence: numbers and texts. */
function keyedValues(object: JsonObject): Reason['values'] {
  const values = jsonObject(field(object, 'values'), object.file, placeOf(object, 'values'))
  return Object.fromEntries(Object.keys(values.fields).map((key) => [key, keyedValue(values, key)]))
}

function keyedValue(values: JsonObject, key: string): number | string {
  const value = field(values, key)
  return typeof value === 'string'
    ? textField(values, key, 2000)
    : checkedNumber(value, values.file, placeOf(values, key), KEYED_VALUE)
}

/** Two numbers `[from, to]`; `null` when the key is missing. @throws {FormatError} anything else. */
export function pairField(object: JsonObject, key: string, limits: NumberLimits): readonly [number, number] | null {
  const told = field(object, key)
  if (told === undefined) return null
  if (!Array.isArray(told) || told.length !== 2) fail(object, key, `is ${shown(told)}; two numbers are expected`)
  const [from, to] = told.map((end, i) => checkedNumber(end, object.file, `${placeOf(object, key)}[${i}]`, limits))
  return [from!, to!]
}

/** A list of numbers. @throws {FormatError} anything else. */
export function numberList(object: JsonObject, key: string, most: number, limits: NumberLimits): number[] {
  const place = placeOf(object, key)
  return optionalList(object, key, most).map((value, i) => checkedNumber(value, object.file, `${place}[${i}]`, limits))
}

/** A job is written by programs only, so a key that is not known is a fault or from a newer one. @throws {FormatError} */
export function onlyKeys(object: JsonObject, known: readonly string[]): void {
  const odd = Object.keys(object.fields).find((key) => !known.includes(key))
  if (odd !== undefined) {
    throw new FormatError(object.file, object.place, `holds ${shown(odd)}, which this version does not know; remove it`)
  }
}

/** No id twice among the parts of one list. @throws {FormatError} */
export function differentIds(object: JsonObject, key: string, parts: readonly { readonly id: string }[]): void {
  const twice = parts.find(({ id }, i) => parts.findIndex((other) => other.id === id) !== i)
  if (twice !== undefined) fail(object, key, `holds the id ${shown(twice.id)} twice; ids must differ`)
}

function shownOrMissing(value: unknown): string {
  return value === undefined ? 'missing' : shown(value)
}

function fail(object: JsonObject, key: string, mend: string): never {
  throw new FormatError(object.file, placeOf(object, key), mend)
}
