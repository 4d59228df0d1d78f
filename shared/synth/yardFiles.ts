import { writeWav } from '../audio/writeWav'
import { utf8Bytes } from '../base/utf8Bytes'
import { writeLineJson } from '../line/writeLineJson'
import { csvLine } from '../sweep/csvLine'
import { writeSweepCsv } from '../sweep/writeSweepCsv'
import { leakOverFloorDb } from './leakOverFloor'
import { renderClip } from './renderClip'
import type { ClipPlan, Yard } from './yard'

/** A file of a folder. */
export interface NamedFile {
  readonly path: string
  readonly bytes: Uint8Array
}

/** A clip as the bytes of a WAV file, in its recorder's encoding. */
export function clipFile(yard: Yard, plan: ClipPlan): NamedFile {
  const { kind, bits } = plan.recorder.encoding
  const encoding = kind === 'float' ? 'float32' : bits === 24 ? 'pcm24' : 'pcm16'
  return { path: plan.row.file, bytes: writeWav(renderClip(yard, plan), { encoding }) }
}

/**
 * A yard as a sweep folder: sheet, line and labels first, then the clips, each made when it is asked for.
 *
 * @param job Name of the job in the labels.
 */
export function* renderYard(yard: Yard, job: string): Generator<NamedFile> {
  yield* sheetFiles(yard, job)
  for (const plan of yard.clips) yield clipFile(yard, plan)
}

/** The text files of a sweep folder: `sweep.csv`, `line.json`, `labels.csv`. */
export function sheetFiles(yard: Yard, job: string): NamedFile[] {
  return [
    textFile('sweep.csv', writeSweepCsv(yard.clips.map((plan) => plan.row))),
    textFile('line.json', writeLineJson(yard.told)),
    textFile('labels.csv', labels(yard, job)),
  ]
}

/** Signal over the ambient floor from which a clip is labelled `leak`, dB in its best band. */
export const HEARD_DB = 3

/** The truth as a sheet: `leak` where a leak can be heard, `no leak`, or `spoilt`; and where the nearest hole is. */
function labels(yard: Yard, job: string): string {
  const rows = yard.clips.map((plan) => {
    const { file, alongM } = plan.row
    return csvLine([file, label(yard, plan), job, String(alongM), nearestLeakM(yard, plan)])
  })
  return csvLine(['file', 'label', 'job', 'along_m', 'leak_at_m']) + rows.join('')
}

function label(yard: Yard, plan: ClipPlan): string {
  if (plan.spoil !== null) return 'spoilt'
  if (plan.row.air === 'off') return 'no leak'
  return (leakOverFloorDb(yard, plan) ?? Number.NEGATIVE_INFINITY) >= HEARD_DB ? 'leak' : 'no leak'
}

function nearestLeakM(yard: Yard, plan: ClipPlan): string {
  const off = (leakM: number) => Math.abs(leakM - plan.row.alongM)
  const nearest = [...yard.truth.leakAlongM].sort((a, b) => off(a) - off(b))[0]
  return nearest === undefined ? '' : String(nearest)
}

/** A text as a file in UTF-8. */
export function textFile(path: string, text: string): NamedFile {
  return { path, bytes: utf8Bytes(text) }
}
