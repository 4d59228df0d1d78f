import { createHash } from 'node:crypto'
import type { Clip } from '../../../shared/audio/clip'
import { strongestChannel } from '../../../shared/audio/strongestChannel'
import { clipEvidence } from '../../../shared/evidence/clipEvidence'
import { CLIP_FEATURES } from '../../../shared/evidence/features'
import { detectorValues } from '../../../shared/learn/detectorFeatures'
import type { Example } from '../../../shared/learn/example'
import { timbre } from '../../../shared/spectrum/timbre'

/** A clip as the bench judges it. */
export interface HeardClip extends Example {
  /** Kind of sound, or family of yard. */
  readonly kind: string
  /** What the simple judges go by: level in the bubble band, dBFS, and bubbling, 0 to 1. */
  readonly levelDbFs: number
  readonly bubbling: number
}

/** Measures a clip; `null` for a spoilt one. */
export function hearSound(
  clip: Clip,
  told: Pick<HeardClip, 'name' | 'job' | 'device' | 'cover' | 'isLeak' | 'kind'>,
): HeardClip | null {
  const evidence = clipEvidence(clip)
  if (evidence.problems.some(({ severity }) => severity === 'spoilt')) return null
  const samples = clip.channels[strongestChannel(clip)]!
  const level = CLIP_FEATURES.find(({ id }) => id === 'level_dbfs')!.of(evidence)
  return {
    ...told,
    sha256: createHash('sha256')
      .update(new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength))
      .digest('hex'),
    values: detectorValues({ evidence, timbre: timbre(samples, clip.sampleRateHz) }),
    levelDbFs: level ?? -120,
    bubbling: evidence.bubbling,
  }
}
