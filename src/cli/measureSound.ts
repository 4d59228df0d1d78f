import { createHash } from 'node:crypto'
import { readWav } from '../../shared/audio/readWav'
import { strongestChannel } from '../../shared/audio/strongestChannel'
import type { Problem } from '../../shared/base/problem'
import { heardClip } from '../../shared/evidence/heardClip'
import { detectorValues } from '../../shared/learn/detectorFeatures'
import { timbre } from '../../shared/spectrum/timbre'
import { openClip, openFile } from './files'
import type { ClipPlace } from './listen'

/** What the detector looks at, of one clip. */
export interface MeasuredSound {
  /** `null` when the clip could not be read or is spoilt. */
  readonly values: (number | null)[] | null
  readonly problems: readonly Problem[]
}

const opened = ({ folder, file }: ClipPlace) => (folder === null ? openFile(file) : openClip(folder, file))

/** SHA-256 of a clip's bytes; `null` when it cannot be opened. */
export function sha256OfClip(place: ClipPlace): string | null {
  const clip = opened(place)
  return 'problem' in clip ? null : createHash('sha256').update(clip.bytes).digest('hex')
}

/** Opens one clip and measures it for the detector. */
export function measureSound(place: ClipPlace): MeasuredSound {
  const clip = opened(place)
  if ('problem' in clip) return { values: null, problems: [clip.problem] }
  let samples: { channel: Float32Array; rateHz: number } | null = null
  const { evidence, problems } = heardClip(() => {
    const read = readWav(clip.bytes, place.file)
    samples = { channel: read.channels[strongestChannel(read)]!, rateHz: read.sampleRateHz }
    return read
  })
  const all = [...problems, ...(evidence?.problems ?? [])]
  if (evidence === null || samples === null || all.some(({ severity }) => severity === 'spoilt')) {
    return { values: null, problems: all }
  }
  const { channel, rateHz } = samples as { channel: Float32Array; rateHz: number }
  return { values: detectorValues({ evidence, timbre: timbre(channel, rateHz) }), problems: all }
}
