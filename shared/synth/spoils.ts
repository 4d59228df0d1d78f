import type { Parts } from './clipSounds'
import {
  addBurst,
  blankEnvelope,
  bump,
  type NuisanceClip,
  type OneRing,
  through,
  toRings,
  withPower,
} from './nuisances/nuisanceClip'
import { wanderingEnvelope } from './nuisances/weather'
import type { ClipPlan } from './yard'

/** Length of a clip that was broken off, s. */
const SHORT_S = 0.4

/** What 99 of 100 samples of a faint clip stay within: less than half a step of 16 bits, so the converter hardly moves. */
export const FAINT_REACH = 0.4 / 2 ** 15

/** Length of a clip as it was recorded, s. */
export function clipDurationS(plan: ClipPlan): number {
  return plan.spoil === 'short' ? SHORT_S : plan.durationS
}

/**
 * The microphone is jostled for the whole clip: bumps of its foot and cable several times a second, each a thump with a
 * scratch in it, over rubbing that hardly rests. Levels and rate are chosen.
 */
export function addHandling(parts: Parts, clip: NuisanceClip): void {
  const { random, durationS, ambientPower, air } = clip
  const height = Math.sqrt(ambientPower) * 10 ** (random.uniform(38, 44) / 20)
  const thumps: OneRing[] = []
  const scratches = blankEnvelope(durationS)
  for (let timeS = random.uniform(0, 0.1); timeS < durationS; timeS += random.uniform(0.17, 0.24)) {
    const one = height * 10 ** (random.normal(0, 2) / 20)
    for (const [m, pitchHz] of [random.uniform(30, 50), random.uniform(55, 80), random.uniform(110, 180)].entries())
      thumps.push({ timeS, pitchHz, amplitude: (2 * one) / (1 + m), decayPerS: random.uniform(55, 85) })
    addBurst(scratches, timeS, random.uniform(0.01, 0.02), one)
  }
  parts.rings.push({ rings: toRings(thumps), gain: air, areBubbles: false })
  parts.swelling.push({ psd: through(withPower(bump(300, 5000), 0.1), air), envelope: scratches })
  const rubbing = wanderingEnvelope(durationS, 0.15, random)
  parts.swelling.push({ psd: through(withPower(bump(100, 1500), 3 * ambientPower), air), envelope: rubbing })
}
