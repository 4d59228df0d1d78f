import { FormatError } from '../../base/errors'
import type { Job } from '../job'
import { readJob } from '../readJob'
import { jobState } from './jobState'
import { jobForm, mergeForm } from './mergeForm'
import { JOB_RULE, type JsonFields } from './mergeRules'
import { Merging } from './merging'

export interface MergedJob {
  /** The very job that received, when the other copy had nothing new. */
  readonly job: Job
  /** Opinions that came with it. */
  readonly newOpinions: number
  /** Clips that came with it. */
  readonly newClips: number
  /** Places at which the copies differ and did not before. */
  readonly newApart: number
}

/**
 * Brings another copy of a job into this one. FORMAT.md of shared/job tells the rules.
 *
 * Everything of both is in the result. Where both tell the same thing differently, this copy's stays and the other's is
 * kept beside it in `keptApart`. Up to which of two different values is the one shown, and to the order of lists, merging
 * is commutative, associative and idempotent (`jobState` is the same), and merging again changes nothing at all.
 *
 * @param own   Receives.
 * @param other Another copy; may have been shared without customer or with some points only.
 * @throws {FormatError} another job; together they are more than a job may hold.
 */
export function mergeJobs(own: Job, other: Job, fileName: string): MergedJob {
  if (own.id !== other.id) throw new FormatError(fileName, '', 'belongs to another job; open it by itself')
  const merging = new Merging(apartOf(own), apartOf(other))
  const merged = jobForm(merging.merged(JOB_RULE, mergeForm(own), mergeForm(other)) as JsonFields)
  const job = readJob({ ...merged, ...(merging.apart.length > 0 && { kept_apart: merging.apart }) }, fileName)
  const isSame = JSON.stringify(jobState(job)) === JSON.stringify(jobState(own))
  if (isSame) return { job: own, newOpinions: 0, newClips: 0, newApart: 0 }
  return {
    job,
    newOpinions: (job.opinions?.length ?? 0) - (own.opinions?.length ?? 0),
    newClips: clipCount(job) - clipCount(own),
    newApart: Math.max(0, (job.keptApart?.length ?? 0) - (own.keptApart?.length ?? 0)),
  }
}

function apartOf({ keptApart = [] }: Job): ReadonlyMap<string, readonly unknown[]> {
  const byPlace = new Map<string, unknown[]>()
  for (const { place, value } of keptApart) byPlace.set(place, [...(byPlace.get(place) ?? []), value])
  return byPlace
}

function clipCount({ lines }: Job): number {
  const clips = lines.flatMap((line) => [...line.sweeps.flatMap((sweep) => sweep.clips), ...(line.removedClips ?? [])])
  return clips.length
}
