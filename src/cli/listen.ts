import { readWav } from '../../shared/audio/readWav'
import { type HeardClip, heardClip } from '../../shared/evidence/heardClip'
import { openClip, openFile } from './files'

/** A clip to be opened: in a folder, or wherever it lies. */
export interface ClipPlace {
  readonly folder: string | null
  readonly file: string
}

/** A clip with its name as the call gave it, and what it says. */
export interface InspectedClip extends HeardClip {
  readonly file: string
}

/** Listens to a clip whose bytes are here already. */
export function listenTo(bytes: Uint8Array, file: string): HeardClip {
  return heardClip(() => readWav(bytes, file))
}

/** Opens one clip and listens to it. The samples are gone when it returns. */
export function listen({ folder, file }: ClipPlace): HeardClip {
  const opened = folder === null ? openFile(file) : openClip(folder, file)
  if ('problem' in opened) return { evidence: null, problems: [opened.problem] }
  return listenTo(opened.bytes, file)
}
