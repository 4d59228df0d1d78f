import { evaluate } from '../../../shared/learn/evaluate'
import { HEARD_DIGITS } from '../../../shared/learn/model'
import { scoreSound } from '../../../shared/learn/scoreSound'
import { sentence } from '../../../shared/words/sentence'
import type { Args } from '../args'
import { CallError } from '../callError'
import { evaluationText } from '../detectorText'
import { labelledFolders } from '../labelledFolders'
import { jsonLine, pageWidth, print, wrapped } from '../print'
import { readModelFile } from '../readModelFile'

/** `yardhark evaluate MODEL FOLDER...`: what a detector is worth on labelled clips it has not learnt from. */
export async function evaluateCommand({ rest: [path, ...folders], options }: Args): Promise<void> {
  const model = readModelFile(path, 'evaluate')
  if (folders.length === 0)
    throw new CallError('evaluate needs labelled folders after the model; yardhark evaluate --help')
  const { examples } = await labelledFolders(folders, options.get('cache'))
  const heard = new Set(model.heard)
  const fresh = examples.filter(({ sha256 }) => !heard.has(sha256.slice(0, HEARD_DIGITS)))
  if (!fresh.some(({ isLeak }) => isLeak) || fresh.every(({ isLeak }) => isLeak)) {
    const left = examples.length - fresh.length
    throw new CallError(
      `${left > 0 ? `${sentence('detector_heard_left_out', { clips: left })} ` : ''}${sentence('detector_no_area', {})}`,
    )
  }
  const scored = fresh.map((example) => ({
    example,
    probability: scoreSound(model, example.values, example).probability,
  }))
  const evaluation = evaluate(scored, 'job', { threshold: model.threshold })
  if (options.has('json')) return print(jsonLine({ left_out: examples.length - fresh.length, ...evaluation }))
  const width = pageWidth()
  const left = examples.length - fresh.length
  const note = left === 0 ? '' : `\n${wrapped(sentence('detector_heard_left_out', { clips: left }), width, 0)}`
  return print(`${evaluationText(evaluation, sentence('heading_detector_new_clips', {}), width)}${note}`)
}
