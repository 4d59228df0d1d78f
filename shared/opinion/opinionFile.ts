import { FormatError } from '../base/errors'
import { field, jsonObject } from '../base/jsonFields'
import { parseJson } from '../base/parseJson'
import { shown } from '../base/shown'
import { onlyKeys, textField } from '../job/fields'
import type { Job } from '../job/job'
import { opinionJson } from '../job/opinionJson'
import type { Opinion } from '../job/opinions'
import { readOpinions } from '../job/readOpinions'

/** Goes up with every change that an older program could not read. */
export const OPINION_FILE_VERSION = 1

/** Opinions of a job as a small file of their own, to be sent back. */
export function opinionFile(job: Pick<Job, 'id'>, opinions: readonly Opinion[]): string {
  const file = { opinion_file_version: OPINION_FILE_VERSION, job_id: job.id, opinions: opinions.map(opinionJson) }
  return `${JSON.stringify(file, null, 1)}\n`
}

export interface ReadOpinionFile {
  readonly jobId: string
  readonly opinions: readonly Opinion[]
}

/** @throws {FormatError} no such file; a newer version; opinions of several jobs. */
export function readOpinionFile(text: string, fileName: string): ReadOpinionFile {
  const object = jsonObject(parseJson(text, fileName), fileName, '')
  const version = field(object, 'opinion_file_version')
  if (version !== OPINION_FILE_VERSION) {
    const isNewer = typeof version === 'number' && version > OPINION_FILE_VERSION
    const mend = isNewer
      ? `is ${version}, from a newer version of the program; open it there, or update this one`
      : `is ${version === undefined ? 'missing' : shown(version)}; this is no file of opinions`
    throw new FormatError(fileName, 'opinion_file_version', mend)
  }
  onlyKeys(object, ['opinion_file_version', 'job_id', 'opinions'])
  const jobId = textField(object, 'job_id', 64)
  const opinions = readOpinions(object)
  const stray = opinions.findIndex((opinion) => opinion.jobId !== jobId)
  if (stray >= 0) throw new FormatError(fileName, `opinions[${stray}].job_id`, 'is of another job than the file says')
  return { jobId, opinions }
}
