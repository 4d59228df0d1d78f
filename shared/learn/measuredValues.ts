import type { Clip } from '../audio/clip'
import { strongestChannel } from '../audio/strongestChannel'
import { clipEvidence } from '../evidence/clipEvidence'
import { timbre } from '../spectrum/timbre'
import { detectorValues } from './detectorFeatures'

/** What the detector looks at, of a clip as it was read; `null` for a spoilt one. Slow, for the sake of timbre. */
export function measuredValues(clip: Clip): (number | null)[] | null {
  const evidence = clipEvidence(clip)
  if (evidence.problems.some(({ severity }) => severity === 'spoilt')) return null
  return detectorValues({ evidence, timbre: timbre(clip.channels[strongestChannel(clip)]!, clip.sampleRateHz) })
}
