import type { Random } from '../base/random'
import type { Parts } from './clipSounds'
import { addBurst, blankEnvelope, bump, type NuisanceClip, through, withPower } from './nuisances/nuisanceClip'
import { wanderingEnvelope } from './nuisances/weather'
import type { ClipPlan } from './yard'

/** Length of a clip that was broken off, s. */
const SHORT_S = 0.4

/** What a faint clip lost, dB: nearly everything of it lies below the last bit. */
export const FAINT_DB = -50

/** Length of a clip as it was recorded, s. */
export function clipDurationS(plan: ClipPlan): number {
  return plan.spoil === 'short' ? SHORT_S : plan.durationS
}

/** The microphone is moved about for the whole clip: rubbing noise that never rests, and bumps. Level chosen. */
export function addHandling(parts: Parts, clip: NuisanceClip): void {
  const level = clip.ambientPower * 10 ** (clip.random.uniform(22, 34) / 10)
  const psd = withPower(bump(60, 900), level)
  const envelope = wanderingEnvelope(clip.durationS, 0.15, clip.random)
  for (let i = 0; i < envelope.length; i++) envelope[i] = 0.3 + envelope[i]!
  parts.swelling.push({ psd: through(psd, clip.air), envelope })
  addBumps(parts, clip, level, clip.random)
}

function addBumps(parts: Parts, clip: NuisanceClip, level: number, random: Random): void {
  const envelope = blankEnvelope(clip.durationS)
  for (let atS = random.exponential(2); atS < clip.durationS; atS += random.exponential(2)) {
    addBurst(envelope, atS, 0.03, random.uniform(1, 4))
  }
  parts.swelling.push({ psd: through(withPower(bump(20, 200), level), clip.air), envelope })
}
