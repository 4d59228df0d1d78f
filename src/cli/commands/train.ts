import { basename, dirname, join } from 'node:path'
import { InputError } from '../../../shared/base/errors'
import { printable, shown } from '../../../shared/base/shown'
import { modelJson } from '../../../shared/learn/modelJson'
import { type TrainingOrder, train } from '../../../shared/learn/train'
import { sentence } from '../../../shared/words/sentence'
import type { Args } from '../args'
import { CallError } from '../callError'
import { modelText } from '../detectorText'
import { isThere, writeFile } from '../files'
import { labelledFolders } from '../labelledFolders'
import { modelCard } from '../modelCard'
import { pageWidth, print, wrapped } from '../print'
import { VERSION } from '../version'

const MISS_PERCENT = { default: 5, low: 0, high: 50 }

/** `yardhark train FOLDER...`: from labelled clips to a detector with its card. */
export async function trainCommand({ rest: folders, options }: Args): Promise<void> {
  if (folders.length === 0) throw new CallError('train needs folders with clips and labels; yardhark train --help')
  const out = options.get('out')
  if (out === undefined) throw new CallError('train needs a file to write the model into; add --out ours.json')
  if (isThere(out) && !options.has('force')) {
    throw new CallError(`${printable(out)} is already there; name another file, or add --force to write over it`)
  }
  const order: TrainingOrder = {
    name: options.get('name') ?? basename(out).replace(/\.json$/, ''),
    data: options.get('about') ?? sentence('detector_no_about', {}),
    trainedAt: new Date().toISOString(),
    programVersion: VERSION,
    missShare: missShare(options.get('miss')),
    limits: [sentence('detector_limit_synthetic', {}), sentence('detector_limit_water', {})],
  }
  const { examples, leftOut } = await labelledFolders(folders, options.get('cache'))
  const model = trained(examples, order)
  writeFile(dirname(out), basename(out), new TextEncoder().encode(modelJson(model)))
  const card = `${basename(out).replace(/\.json$/, '')}.card.md`
  writeFile(dirname(out), card, new TextEncoder().encode(modelCard(model)))
  const width = pageWidth()
  const notes = leftOut.map((why) => wrapped(sentence('detector_left_out', { why }), width, 0)).join('')
  return print(`${modelText(model, width)}\n${notes}${printable(join(dirname(out), card))}\n`)
}

/** A set that cannot teach is a matter of the call. */
function trained(examples: Parameters<typeof train>[0], order: TrainingOrder) {
  try {
    return train(examples, order)
  } catch (error) {
    if (error instanceof InputError) throw new CallError(error.message)
    throw error
  }
}

function missShare(told: string | undefined): number {
  const percent = told === undefined ? MISS_PERCENT.default : Number(told)
  if (!(percent >= MISS_PERCENT.low && percent <= MISS_PERCENT.high)) {
    throw new CallError(`--miss is ${shown(told)}; write a percentage from 0 to 50, like 5`)
  }
  return percent / 100
}
