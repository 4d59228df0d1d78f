import { readWav } from '../../shared/audio/readWav'
import { FormatError } from '../../shared/base/errors'
import type { Problem } from '../../shared/base/problem'
import { clipEvidence } from '../../shared/evidence/clipEvidence'
import type { ClipEvidence } from '../../shared/evidence/evidence'
import { openClip, openFile } from './files'

/** A clip to be opened: in a folder, or wherever it lies. */
export interface ClipPlace {
  readonly folder: string | null
  readonly file: string
}

/** What a clip says; no evidence when it is missing or cannot be read, with the problem that says so. */
export interface Heard {
  readonly evidence: ClipEvidence | null
  readonly problems: readonly Problem[]
}

/** A clip with its name as the call gave it, and what it says. */
export interface InspectedClip extends Heard {
  readonly file: string
}

/** Opens one clip and listens to it. The samples are gone when it returns. */
export function listen({ folder, file }: ClipPlace): Heard {
  const opened = folder === null ? openFile(file) : openClip(folder, file)
  if ('problem' in opened) return { evidence: null, problems: [opened.problem] }
  try {
    return { evidence: clipEvidence(readWav(opened.bytes, file)), problems: [] }
  } catch (error) {
    if (!(error instanceof FormatError)) throw error
    const why = error.place === '' ? error.mend : `${error.place}: ${error.mend}`
    return { evidence: null, problems: [{ key: 'unreadable', severity: 'spoilt', values: { why } }] }
  }
}
