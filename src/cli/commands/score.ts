import { printable } from '../../../shared/base/shown'
import { type SoundScore, scoreSound } from '../../../shared/learn/scoreSound'
import { formatNumber } from '../../../shared/words/formatQuantity'
import { sentence, wordsOf } from '../../../shared/words/sentence'
import type { Args } from '../args'
import { CallError } from '../callError'
import { type MeasuredClip, measuredClips } from '../measuredClips'
import { jsonLine, print, table } from '../print'
import { readModelFile } from '../readModelFile'

/** `yardhark score MODEL FILE...`: what a detector says of single clips. */
export async function scoreCommand({ rest: [path, ...files], options }: Args): Promise<void> {
  const model = readModelFile(path, 'score')
  if (files.length === 0) throw new CallError('score needs the name of a clip after the model; yardhark score --help')
  const told = { device: options.get('device') ?? '', cover: options.get('cover') ?? '' }
  const measured = await measuredClips(
    files.map((file) => ({ folder: null, file })),
    options.get('cache'),
  )
  const scored = measured.map((clip, i) => ({
    file: files[i]!,
    clip,
    score: clip.values === null ? null : scoreSound(model, clip.values, told),
  }))
  if (scored.every(({ score }) => score === null)) {
    throw new CallError(`${printable(files[0]!)}: ${problemText(measured[0]!)}`)
  }
  if (options.has('json')) return print(jsonLine(scored.map(({ file, clip, score }) => jsonOf(file, clip, score))))
  const rows = scored.map(({ file, clip, score }) => [
    printable(file, 60),
    score === null ? '-' : formatNumber(score.probability, 2),
    score === null ? '-' : formatNumber(score.trust, 2),
    score === null
      ? problemText(clip)
      : [...(score.probability >= model.threshold ? ['leak'] : []), ...remarks(score)].join(', '),
  ])
  return print(table([['clip', 'probability', 'weight', ''], ...rows], [true, false, false, true]))
}

function problemText({ problems }: MeasuredClip): string {
  const spoilt = problems.find(({ severity }) => severity === 'spoilt')
  return spoilt === undefined ? '' : wordsOf(spoilt).text
}

function remarks({ distance, usualDistance, isNewDevice, isNewCover }: SoundScore): string[] {
  return [
    ...(distance > usualDistance ? [sentence('label_detector_far', {})] : []),
    ...(isNewDevice ? [sentence('label_detector_new_device', {})] : []),
    ...(isNewCover ? [sentence('label_detector_new_cover', {})] : []),
  ]
}

function jsonOf(file: string, { problems }: MeasuredClip, score: SoundScore | null) {
  return {
    file,
    probability: score?.probability ?? null,
    weight: score?.trust ?? null,
    distance: score?.distance ?? null,
    usual_distance: score?.usualDistance ?? null,
    new_device: score?.isNewDevice ?? null,
    new_cover: score?.isNewCover ?? null,
    problems: problems.map(({ key, severity }) => ({ key, severity })),
  }
}
