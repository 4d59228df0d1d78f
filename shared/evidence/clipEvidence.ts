import type { Clip } from '../audio/clip'
import { clipQuality } from '../audio/clipQuality'
import { strongestChannel } from '../audio/strongestChannel'
import { bubblingFrom } from '../bubbles/bubblingFrom'
import { findRings } from '../bubbles/findRings'
import { summariseRings } from '../bubbles/summariseRings'
import { bandLevels } from '../spectrum/bandLevels'
import type { ClipEvidence } from './evidence'

/**
 * Everything one clip says: band levels, rings, bubbling, and what is wrong with it.
 *
 * Taken from the strongest channel at its native rate and level; the clip is not changed.
 *
 * @param clip As read: finite samples, 8 to 192 kHz.
 * @returns The reader's problems first, then the clip's own.
 */
export function clipEvidence(clip: Clip): ClipEvidence {
  const samples = clip.channels[strongestChannel(clip)]!
  const found = findRings(samples, clip.sampleRateHz)
  const rings = summariseRings(found)
  return {
    durationS: samples.length / clip.sampleRateHz,
    sampleRateHz: clip.sampleRateHz,
    channels: clip.channels.length,
    bands: bandLevels(samples, clip.sampleRateHz, found.rings),
    rings,
    ringList: found.rings,
    bubbling: bubblingFrom(rings),
    problems: [...clip.problems, ...clipQuality(samples, clip.sampleRateHz, clip)],
  }
}
