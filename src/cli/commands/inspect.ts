import { evidenceJson } from '../../../shared/answer/evidenceJson'
import { printable } from '../../../shared/base/shown'
import { BAND_FEATURES, CLIP_FEATURES } from '../../../shared/evidence/features'
import { csvLine } from '../../../shared/sweep/csvLine'
import { wordsOf } from '../../../shared/words/sentence'
import { Analysts } from '../analysts'
import type { Args } from '../args'
import { CallError } from '../callError'
import { inspectText } from '../inspectText'
import type { InspectedClip } from '../listen'
import { clearProgress, forTerminal, jsonLine, pageWidth, print, showProgress } from '../print'

/** `yardhark inspect FILE...`: what single clips say. */
export async function inspectCommand({ rest: files, options }: Args): Promise<void> {
  if (files.length === 0) throw new CallError('inspect needs the name of a clip; yardhark inspect --help')
  if (options.has('csv') && options.has('json'))
    throw new CallError('--csv and --json are both there; keep one of them')
  const clips = await hear(files)
  if (clips.every((clip) => clip.evidence === null)) throw noneReadable(clips[0]!)
  if (options.has('json')) return print(jsonLine(clips.map(jsonOf)))
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

const FEATURES = [...CLIP_FEATURES, ...BAND_FEATURES]
const CSV_HEADER = ['file', 'duration_s', 'sample_rate_hz', 'channels', ...FEATURES.map(({ id }) => id), 'problems']

/** One row a clip: every feature in full precision, empty where the clip cannot say. */
function csvOf(clips: readonly InspectedClip[]): string {
  return [CSV_HEADER, ...clips.map(csvCells)].map((cells) => csvLine(cells.map(forTerminal))).join('')
}

function csvCells({ file, evidence, problems }: InspectedClip): string[] {
  const all = [...problems, ...(evidence?.problems ?? [])].map(({ key, severity }) => `${key} (${severity})`)
  const { durationS, sampleRateHz, channels } = evidence ?? { durationS: null, sampleRateHz: null, channels: null }
  const numbers = [durationS, sampleRateHz, channels, ...FEATURES.map(({ of }) => (evidence ? of(evidence) : null))]
  return [file, ...numbers.map((value) => String(value ?? '')), all.join('; ')]
}
