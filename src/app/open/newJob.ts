import type { Job } from '../../../shared/job/job'
import { readLineJson } from '../../../shared/line/readLineJson'
import { sentence } from '../../../shared/words/sentence'
import { newId } from '../newId'
import { freeName } from './freeName'

/** A job made from nothing: one line of which nothing is told yet. */
export function newJob(nowS: number, takenNames: ReadonlySet<string>): Job {
  const { line } = readLineJson({}, 'line.json')
  const name = sentence('label_line_number', { number: 1 })
  return {
    id: newId(),
    name: freeName(sentence('label_new_job', {}), takenNames),
    createdS: nowS,
    changedS: nowS,
    lines: [{ id: newId(), name, line, problems: [], sweeps: [], confirmations: [] }],
  }
}
