import type { Clip } from './clip'

/**
 * The channel that evidence is taken from: the one with the most energy once its mean is taken off.
 *
 * A stereo recorder with one microphone plugged in has noise on the other channel, and a mean of both would halve
 * what was heard; a constant offset is no sound.
 *
 * @param clip At least one channel.
 * @returns Index into `clip.channels`; the first of equal ones.
 */
export function strongestChannel(clip: Clip): number {
  let best = 0
  let most = -1
  for (const [index, samples] of clip.channels.entries()) {
    const energy = clip.channels.length === 1 ? 0 : energyAroundMean(samples)
    if (energy > most) {
      best = index
      most = energy
    }
  }
  return best
}

/** Σ (x − mean)², by the first sample as a stand-in for the mean so that an offset costs no digits. */
function energyAroundMean(samples: Float32Array): number {
  const origin = samples[0] ?? 0
  let sum = 0
  let squares = 0
  for (let i = 0; i < samples.length; i++) {
    const x = samples[i]! - origin
    sum += x
    squares += x * x
  }
  return samples.length === 0 ? 0 : Math.max(0, squares - (sum * sum) / samples.length)
}
