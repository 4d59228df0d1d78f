import { evidenceJson } from '../../../shared/answer/evidenceJson'
import { printable } from '../../../shared/base/shown'
import { bandFeatures, CLIP_FEATURES } from '../../../shared/evidence/features'
import { csvLine } from '../../../shared/sweep/csvLine'
import { wordsOf } from '../../../shared/words/sentence'
import { Analysts } from '../analysts'
import type { Args } from '../args'
import { CallError } from '../callError'
import { inspectText } from '../inspectText'
import type { InspectedClip } from '../listen'
import { clearProgress, pageWidth, print, showProgress } from '../print'

/** `yardhark inspect FILE...`: what single clips say. */
export async function inspectCommand({ rest: files, options }: Args): Promise<void> {
  if (files.length === 0) throw new CallError('inspect needs the name of a clip; yardhark inspect --help')
  if (options.has('csv') && options.has('json'))
    throw new CallError('--csv and --json are both there; keep one of them')
  const clips = await hear(files)
  if (clips.every((clip) => clip.evidence === null)) throw noneReadable(clips[0]!)
  if (options.has('json')) return print(`${JSON.stringify(clips.map(jsonOf))}\n`)
  return print(options.has('csv') ? csvOf(clips) : inspectText(clips, pageWidth()))
}

async function hear(files: readonly string[]): Promise<InspectedClip[]> {
  const analysts = new Analysts(files.length)
  try {
    const heard = await analysts.listen(
      files.map((file) => ({ folder: null, file })),
      (done) => showProgress(`listening: ${done} of ${files.length} clips`),
    )
    return heard.map((clip, i) => ({ file: files[i]!, ...clip }))
  } finally {
    clearProgress()
    await analysts.close()
  }
}

function noneReadable({ file, problems }: InspectedClip): CallError {
  const { text, mend } = wordsOf(problems[0]!)
  return new CallError(`${printable(file)}: ${mend === null ? text : `${text} ${mend}`}`)
}

function jsonOf({ file, evidence, problems }: InspectedClip) {
  return evidenceJson(file, evidence, problems)
}

/** One row a clip: every feature and every band that any of them has, full precision, empty where a clip cannot say. */
function csvOf(clips: readonly InspectedClip[]): string {
  const rows = clips.map((clip) => new Map(cellsOf(clip)))
  const columns = [...new Set(rows.flatMap((row) => [...row.keys()]))]
  const ordered = [...columns.filter((name) => name !== 'problems'), 'problems']
  return [ordered, ...rows.map((row) => ordered.map((name) => row.get(name) ?? ''))].map(csvLine).join('')
}

function cellsOf({ file, evidence, problems }: InspectedClip): [string, string][] {
  const all = [...problems, ...(evidence?.problems ?? [])].map(({ key, severity }) => `${key} (${severity})`)
  if (evidence === null)
    return [
      ['file', file],
      ['problems', all.join('; ')],
    ]
  const features = [...CLIP_FEATURES, ...bandFeatures(evidence)]
  return [
    ['file', file],
    ['duration_s', String(evidence.durationS)],
    ['sample_rate_hz', String(evidence.sampleRateHz)],
    ['channels', String(evidence.channels)],
    ...features.map(({ id, of }): [string, string] => [id, String(of(evidence) ?? '')]),
    ['problems', all.join('; ')],
  ]
}
