import { differentValues, goesOn } from './differentValues'
import { listEntries, placeUnder } from './listEntries'
import type { JsonFields, MergeRule } from './mergeRules'

type Apart = ReadonlyMap<string, readonly unknown[]>

/** Lives for one merge: gathers what is kept apart while it goes through both copies. */
export class Merging {
  readonly apart: { readonly place: string; readonly value: unknown }[] = []

  constructor(
    private readonly ownApart: Apart,
    private readonly otherApart: Apart,
  ) {}

  /** Both as one, by the rule. `undefined` where neither has anything. */
  merged(rule: MergeRule, own: unknown, other: unknown, place = ''): unknown {
    if (own === undefined && other === undefined) return undefined
    switch (rule.kind) {
      case 'own':
        return own ?? other
      case 'least':
        return Math.min(...numbers(own, other))
      case 'greatest':
        return Math.max(...numbers(own, other))
      case 'set':
        return union(own, other)
      case 'list':
        return this.list(rule, own, other, place)
      case 'parts':
        return isFields(own ?? other) ? this.parts(rule.parts, own, other, place) : this.value(own, other, place, false)
      case 'value':
        return this.value(own, other, place, false)
      case 'log':
        return this.value(own, other, place, true)
    }
  }

  private parts(rules: Readonly<Record<string, MergeRule>>, own: unknown, other: unknown, place: string): unknown {
    const [ours, theirs] = [fieldsOf(own), fieldsOf(other)]
    const keys = [...new Set([...Object.keys(ours), ...Object.keys(theirs)])]
    const merged: Record<string, unknown> = {}
    for (const key of keys) {
      const rule = rules[key] ?? { kind: 'value' }
      const value = this.merged(rule, ours[key], theirs[key], placeUnder(place, key))
      if (value !== undefined) merged[key] = value
    }
    return merged
  }

  private list(
    rule: Extract<MergeRule, { kind: 'list' }>,
    own: unknown,
    other: unknown,
    place: string,
  ): readonly unknown[] {
    const ours = listEntries(rule, own)
    const theirs = listEntries(rule, other)
    const ids = [...ours.keys(), ...[...theirs.keys()].filter((id) => !ours.has(id)).sort()]
    const merged = ids.map((id) => this.merged(rule.entry, ours.get(id), theirs.get(id), placeUnder(place, id)))
    const { order } = rule
    if (order === null || ids.length === ours.size) return merged
    return (merged as JsonFields[]).sort((a, b) => Number(a[order]) - Number(b[order]))
  }

  /** Our own stays unless it says nothing, or less than another. */
  private value(own: unknown, other: unknown, place: string, isLog: boolean): unknown {
    const beside = [...(this.ownApart.get(place) ?? []), ...(this.otherApart.get(place) ?? [])]
    const told = [own, other].filter((value) => value !== undefined)
    const different = differentValues([...told, ...beside], isLog)
    if (different[0] === 'null') return own ?? other ?? null // nobody tells anything: an empty text stays one
    const ownText = JSON.stringify(own ?? null)
    const shown = different.includes(ownText)
      ? ownText
      : (different.find((text) => isLog && goesOn(ownText, text)) ?? different[0]!)
    for (const text of different) if (text !== shown) this.apart.push({ place, value: JSON.parse(text) })
    if (shown === ownText && own !== undefined) return own
    return JSON.parse(shown) as unknown
  }
}

function numbers(...values: readonly unknown[]): number[] {
  return values.filter((value): value is number => typeof value === 'number')
}

function union(own: unknown, other: unknown): unknown[] {
  const ours = (own ?? []) as readonly unknown[]
  const known = new Set(ours.map((entry) => JSON.stringify(entry)))
  const added = ((other ?? []) as readonly unknown[]).filter((entry) => !known.has(JSON.stringify(entry)))
  return [...ours, ...added.sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1))]
}

function isFields(value: unknown): boolean {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function fieldsOf(value: unknown): JsonFields {
  return isFields(value) ? (value as JsonFields) : {}
}
