import { InputError } from '../../base/errors'
import type { Job } from '../job'
import type { KeptApart } from '../keptApart'
import { readJob } from '../readJob'
import { listEntries } from './listEntries'
import { jobForm, mergeForm } from './mergeForm'
import { JOB_RULE, type JsonFields, type MergeRule } from './mergeRules'

/**
 * The job with what was kept apart in place of what it showed, which is now kept apart itself: nothing is lost by choosing.
 *
 * @throws {InputError} nothing of the kind is kept apart in this job.
 * @throws {FormatError} a value that cannot stand there: a stranger's file may hold anything.
 */
export function takeApart(job: Job, { place, value }: KeptApart): Job {
  const text = JSON.stringify(value)
  const isThis = (each: KeptApart) => each.place === place && JSON.stringify(each.value) === text
  if (!job.keptApart?.some(isThis)) throw new InputError(`nothing is kept apart at ${place}`)
  let shown: unknown = null
  const form = replaced(JOB_RULE, mergeForm(job), place.split('/').map(unescaped), (old) => {
    shown = old ?? null
    return value
  }) as JsonFields
  const apart = [...job.keptApart.filter((each) => !isThis(each)), { place, value: shown }]
  return readJob({ ...jobForm(form), kept_apart: apart }, job.name)
}

/** The job without something that was kept apart: what it shows is right. */
export function letGoApart(job: Job, { place, value }: KeptApart): Job {
  const text = JSON.stringify(value)
  const left = (job.keptApart ?? []).filter((each) => each.place !== place || JSON.stringify(each.value) !== text)
  const { keptApart: _, ...rest } = job
  return left.length === 0 ? rest : { ...rest, keptApart: left }
}

/** A copy with one value changed; as it is where the steps lead nowhere. */
function replaced(
  rule: MergeRule,
  part: unknown,
  [step, ...steps]: readonly string[],
  change: (old: unknown) => unknown,
): unknown {
  if (step === undefined) return change(part)
  if (rule.kind === 'list') {
    const ids = [...listEntries(rule, part).keys()]
    return (part as readonly unknown[]).map((entry, i) =>
      ids[i] === step ? replaced(rule.entry, entry, steps, change) : entry,
    )
  }
  const fields = (part ?? {}) as JsonFields
  const under = rule.kind === 'parts' ? rule.parts[step] : undefined
  return { ...fields, [step]: replaced(under ?? { kind: 'value' }, fields[step], steps, change) }
}

function unescaped(step: string): string {
  return step.replaceAll('~1', '/').replaceAll('~0', '~')
}

/** Where something is kept apart, in words a person may know again: the last key of its place. */
export function apartKey({ place }: KeptApart): string {
  return unescaped(place.split('/').at(-1) ?? place)
}
