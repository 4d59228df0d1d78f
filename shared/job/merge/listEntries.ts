import type { JsonFields, MergeRule } from './mergeRules'

/** Entries of a list by their ids, in the order of the list. */
export function listEntries(rule: Extract<MergeRule, { kind: 'list' }>, list: unknown): Map<string, JsonFields> {
  const entries = new Map<string, JsonFields>()
  const counts = new Map<string, number>()
  for (const entry of (list ?? []) as readonly JsonFields[]) {
    const same = rule.sameOf?.(entry) ?? ''
    const occurrence = counts.get(same) ?? 0
    counts.set(same, occurrence + 1)
    entries.set(rule.idOf(entry, occurrence), entry)
  }
  return entries
}

/** A place in a job: keys and ids with slashes between, slashes and tildes in them escaped as in JSON pointers. */
export function placeUnder(place: string, key: string): string {
  const step = key.replaceAll('~', '~0').replaceAll('/', '~1')
  return place === '' ? step : `${place}/${step}`
}
