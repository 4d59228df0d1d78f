import type { Job } from '../job'
import { differentValues } from './differentValues'
import { listEntries, placeUnder } from './listEntries'
import { mergeForm } from './mergeForm'
import { JOB_RULE, type JsonFields, type MergeRule } from './mergeRules'

/**
 * All that a job tells, without which of two different values is the one shown and without the order of lists: two jobs of
 * one state hold the same.
 *
 * @returns Plain data to be compared as JSON.
 */
export function jobState(job: Job): unknown {
  const apart = new Map<string, unknown[]>()
  for (const { place, value } of job.keptApart ?? []) apart.set(place, [...(apart.get(place) ?? []), value])
  return stateOf(JOB_RULE, mergeForm(job), '', apart)
}

function stateOf(rule: MergeRule, value: unknown, place: string, apart: ReadonlyMap<string, unknown[]>): unknown {
  switch (rule.kind) {
    case 'own':
      return null
    case 'least':
    case 'greatest':
      return value ?? null
    case 'set':
      return ((value ?? []) as readonly unknown[]).map((entry) => JSON.stringify(entry)).sort()
    case 'list': {
      const entries = [...listEntries(rule, value)].sort(([a], [b]) => (a < b ? -1 : 1))
      return entries.map(([id, entry]) => [id, stateOf(rule.entry, entry, placeUnder(place, id), apart)])
    }
    case 'value':
    case 'log':
      return differentValues([value, ...(apart.get(place) ?? [])], rule.kind === 'log')
    case 'parts': {
      if (typeof value !== 'object' || value === null) return stateOf({ kind: 'value' }, value, place, apart)
      const keys = Object.keys(value).sort()
      const states = keys.map((key) => {
        const under = placeUnder(place, key)
        return [key, stateOf(rule.parts[key] ?? { kind: 'value' }, (value as JsonFields)[key], under, apart)] as const
      })
      return states.filter(([, state]) => !saysNothing(state))
    }
  }
}

/** A part that says nothing is the same as none: readers fill in what was not told. */
function saysNothing(state: unknown): boolean {
  const text = JSON.stringify(state)
  return ['null', '[]', '["null"]'].includes(text)
}
