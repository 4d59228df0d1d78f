import type { Job } from '../job'
import { jobJson } from '../jobJson'
import type { JsonFields } from './mergeRules'

/**
 * A job's JSON as it is merged: a clip that was taken out stands in its sweep with the others, marked, so that what was
 * told of it stands in one place whether it is in or out.
 */
export function mergeForm(job: Job): JsonFields {
  const { kept_apart: _, ...fields } = jobJson(job)
  return { ...fields, lines: listOf(fields, 'lines').map(withRemovedInside) }
}

/** The JSON of a job again. A clip that any copy took out is out, and can be put back. */
export function jobForm(fields: JsonFields): JsonFields {
  return { ...fields, lines: listOf(fields, 'lines').map(withRemovedApart) }
}

function withRemovedInside({ removed_clips, ...line }: JsonFields): JsonFields {
  const sweeps = new Map(listOf(line, 'sweeps').map((sweep) => [sweep.name, sweep]))
  for (const { sweep: name, ...clip } of (removed_clips ?? []) as readonly JsonFields[]) {
    const sweep = sweeps.get(name) ?? { name, problems: [], clips: [] } // a sweep that is there for them only
    sweeps.set(name, { ...sweep, clips: [...listOf(sweep, 'clips'), { ...clip, [OUT]: 1 }] })
  }
  return { ...line, sweeps: [...sweeps.values()] }
}

const OUT = 'taken_out'

function withRemovedApart(line: JsonFields): JsonFields {
  const removed: JsonFields[] = []
  const sweeps = listOf(line, 'sweeps').map((sweep) => {
    const clips = listOf(sweep, 'clips').map(({ [OUT]: out, ...clip }) => ({ clip, isOut: out === 1 }))
    removed.push(...clips.filter(({ isOut }) => isOut).map(({ clip }) => ({ sweep: sweep.name, ...clip })))
    return { ...sweep, clips: clips.filter(({ isOut }) => !isOut).map(({ clip }) => clip) } as JsonFields
  })
  const kept = sweeps.filter((sweep) => sweep.id !== undefined)
  return { ...line, sweeps: kept, ...(removed.length > 0 && { removed_clips: removed }) }
}

function listOf(fields: JsonFields, key: string): readonly JsonFields[] {
  return (fields[key] ?? []) as readonly JsonFields[]
}
