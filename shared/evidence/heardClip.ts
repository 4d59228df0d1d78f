import type { Clip } from '../audio/clip'
import { FormatError } from '../base/errors'
import type { Problem } from '../base/problem'
import { clipEvidence } from './clipEvidence'
import type { ClipEvidence } from './evidence'

/** What a clip says; no evidence when it could not be read, with the problem that says why. */
export interface HeardClip {
  readonly evidence: ClipEvidence | null
  readonly problems: readonly Problem[]
}

/**
 * Reads a clip and listens to it. A file that cannot be read spoils that clip and nothing else.
 *
 * @param read Gives the clip, or throws a `FormatError`, whose place and mend become the problem's.
 */
export function heardClip(read: () => Clip): HeardClip {
  try {
    return { evidence: clipEvidence(read()), problems: [] }
  } catch (error) {
    if (!(error instanceof FormatError)) throw error
    const why = error.place === '' ? error.mend : `${error.place}: ${error.mend}`
    return { evidence: null, problems: [{ key: 'unreadable', severity: 'spoilt', values: { why } }] }
  }
}
