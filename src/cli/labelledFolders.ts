import { basename, join, resolve } from 'node:path'
import { shown } from '../../shared/base/shown'
import type { Example } from '../../shared/learn/example'
import { type LabelledClip, readLabels } from '../../shared/learn/readLabels'
import { wordsOf } from '../../shared/words/sentence'
import { CallError } from './callError'
import { isThere, readText } from './files'
import { measuredClips } from './measuredClips'

const SHEET = 'labels.csv'

/** Labelled clips of some folders as the detector learns from them, and what was left out and why. */
export interface LabelledFolders {
  readonly examples: readonly Example[]
  /** One line a clip. */
  readonly leftOut: readonly string[]
}

/**
 * Reads and measures labelled folders; a folder without jobs in its sheet counts as one job.
 *
 * @throws {CallError} no folder, no sheet, a clip of the sheet that is not there. @throws {FormatError} a wrong sheet.
 */
export async function labelledFolders(folders: readonly string[], cache: string | undefined): Promise<LabelledFolders> {
  const clips = folders.flatMap((folder) => labelled(folder))
  const measured = await measuredClips(clips, cache)
  const examples: Example[] = []
  const leftOut: string[] = []
  for (const [i, { folder, file, clip }] of clips.entries()) {
    const { sha256, values, problems } = measured[i]!
    const name = join(folder, file)
    if (sha256 === null) {
      throw new CallError(
        `${join(folder, SHEET)}: ${shown(file)} has a label and cannot be opened; take its row out, or put the clip there`,
      )
    }
    if (values === null) {
      const why = problems.find(({ severity }) => severity === 'spoilt')
      leftOut.push(`${name}: ${why === undefined ? '' : wordsOf(why).text}`)
      continue
    }
    examples.push({
      name,
      sha256,
      job: clip.job || basename(resolve(folder)),
      device: clip.device,
      cover: clip.cover,
      isLeak: clip.label === 'leak',
      values,
    })
  }
  return { examples, leftOut }
}

interface Placed {
  readonly folder: string
  readonly file: string
  readonly clip: LabelledClip
}

function labelled(folder: string): Placed[] {
  const sheet = join(folder, SHEET)
  if (!isThere(sheet)) {
    throw new CallError(
      `${shown(folder)} has no ${SHEET}; write one with the columns file and label, or name another folder`,
    )
  }
  return readLabels(readText(sheet, 'sheet'), sheet)
    .filter(({ label }) => label !== 'spoilt')
    .map((clip) => ({ folder, file: clip.file, clip }))
}
