import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv2020, type ErrorObject } from 'ajv/dist/2020'
import { describe, expect, it } from 'vitest'

const folder = import.meta.dirname
const read = (name: string) => JSON.parse(readFileSync(join(folder, name), 'utf8'))

const schema = read('answer.schema.json')
const passing = read('passing.json')
const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true, strict: true, verbose: true }).compile(schema)
const errorsOf = (answer: unknown): ErrorObject[] => (validate(answer) ? [] : [...validate.errors!])

const failing = readdirSync(join(folder, 'failing')).map((name) => ({
  name,
  ...(read(`failing/${name}`) as { breaks: string; at: string; answer: unknown }),
}))

/** Errors that only say that something inside failed. */
const isFrame = ({ keyword }: ErrorObject) => ['if', 'allOf', '$ref', 'propertyNames'].includes(keyword)

type Json = null | boolean | number | string | Json[] | { [key: string]: Json }

/** Every place in a value, as the keys that lead there. */
function placesIn(value: Json, path: (string | number)[] = []): (string | number)[][] {
  const inner =
    value !== null && typeof value === 'object'
      ? Object.entries(value).flatMap(([key, entry]) =>
          placesIn(entry, [...path, Array.isArray(value) ? Number(key) : key]),
        )
      : []
  return [path, ...inner]
}

/** A copy with one place given another value, or taken away. */
function changed(
  path: (string | number)[],
  change: (parent: Record<string | number, Json>, key: string | number) => void,
): Json {
  const copy = { root: structuredClone(passing) as Json }
  const full = ['root', ...path]
  const parent = full.slice(0, -1).reduce<Json>((at, key) => (at as Record<string | number, Json>)[key]!, copy)
  change(parent as Record<string | number, Json>, full.at(-1)!)
  return copy.root
}

describe('the schema of an answer', () => {
  it('passes an answer with everything in it, and one that heard nothing', () => {
    expect(errorsOf(passing)).toEqual([])
    expect(errorsOf({ ...passing, verdict: 'no leak heard', sources: [], listen_next: [], dig_first: [] })).toEqual([])
    expect(errorsOf({ ...passing, verdict: 'unsure', sources: [], points: [] })).toEqual([])
  })

  it.each(failing)('refuses $name', ({ breaks, at, answer }) => {
    const places = errorsOf(answer)
      .filter((error) => !isFrame(error))
      .map((error) => error.instancePath)
    expect(breaks).toMatch(/^[A-Z].+\.$/)
    expect([...new Set(places)]).toEqual([at])
  })

  it('has a failing example for every rule but the plain types, which the next test breaks one by one', () => {
    const errors = failing.flatMap(({ answer }) => errorsOf(answer))
    const isBroken = ({ node, keyword }: Rule) =>
      errors.some((error) => error.parentSchema === node && error.keyword === keyword)
    const rules = rulesIn(schema)
    expect(rules.length).toBeGreaterThan(40)
    expect(rules.filter((rule) => !isBroken(rule)).map(({ place, keyword }) => `${place}/${keyword}`)).toEqual([])
  })

  it('refuses another type at any place', () => {
    const places = placesIn(passing)
    expect(places.length).toBeGreaterThan(50)
    const passed = places.filter((path) =>
      [true, 'text', 7, null, [], {}].every(
        (value) => errorsOf(changed(path, (parent, key) => (parent[key] = value))).length === 0,
      ),
    )
    expect(passed).toEqual([])
    const asList = places.filter(
      (path) => errorsOf(changed(path, (parent, key) => (parent[key] = [[true]]))).length === 0,
    )
    expect(asList).toEqual([])
  })

  it('refuses an answer that lacks any one of its keys, or has one more in any object but the values', () => {
    const keys = placesIn(passing).filter((path) => typeof path.at(-1) === 'string' && path.at(-2) !== 'values')
    const lacking = keys.filter((path) => errorsOf(changed(path, (parent, key) => delete parent[key])).length === 0)
    expect(lacking).toEqual([])
    const more = keys.filter((path) => errorsOf(changed(path, (parent) => (parent.extra = 1))).length === 0)
    expect(more).toEqual([])
  })

  it('refuses null where the format does not allow it', () => {
    const nullable = [
      'level_dbfs',
      'over_floor_db',
      'best_band_hz',
      'ring_rate_per_s',
      'median_pitch_hz',
      'bubbling',
      'mend',
      'cost',
    ]
    const passed = placesIn(passing)
      .filter((path) => errorsOf(changed(path, (parent, key) => (parent[key] = null))).length === 0)
      .map((path) => path.at(-1))
    expect([...new Set(passed)].sort()).toEqual(nullable.sort())
  })
})

interface Rule {
  readonly place: string
  readonly node: object
  readonly keyword: string
}

/** The schema's assertions; conditions and plain types left out. */
function rulesIn(node: Json, place = '#'): Rule[] {
  if (node === null || typeof node !== 'object') return []
  if (Array.isArray(node)) return node.flatMap((entry, i) => rulesIn(entry, `${place}/${i}`))
  return Object.entries(node).flatMap(([keyword, value]) => {
    const inside = `${place}/${keyword}`
    if (ASSERTIONS.has(keyword) || (keyword === 'additionalProperties' && value === false))
      return [{ place, node, keyword }]
    if (keyword === 'properties' || keyword === '$defs') {
      return Object.entries(value as Record<string, Json>).flatMap(([name, inner]) =>
        rulesIn(inner, `${inside}/${name}`),
      )
    }
    return keyword === 'if' ? [] : rulesIn(value, inside)
  })
}

const ASSERTIONS = new Set([
  'enum',
  'const',
  'minimum',
  'maximum',
  'exclusiveMinimum',
  'exclusiveMaximum',
  'pattern',
  'minItems',
  'maxItems',
  'required',
])
