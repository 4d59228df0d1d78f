import type { Parts } from '../clipSounds'
import {
  addBurst,
  blankEnvelope,
  bump,
  type NuisanceClip,
  type OneRing,
  through,
  toRings,
  withPower,
} from './nuisanceClip'

/**
 * Somebody walks past: heel and toe, each a thump of three ground modes and a crunch of the sole. Step rate 1.6 to 2.1
 * a second is common for walking; levels and modes are chosen.
 */
export function addFootsteps(parts: Parts, clip: NuisanceClip): void {
  const { random, durationS } = clip
  const strength = Math.sqrt(clip.ambientPower) * 10 ** (random.uniform(6, 18) / 20)
  const stepS = 1 / random.uniform(1.6, 2.1)
  const fromS = random.uniform(0, durationS * 0.5)
  const steps = random.integer(2, Math.max(2, Math.floor((durationS * 0.6) / stepS)))
  const modes = [random.uniform(25, 60), random.uniform(80, 140), random.uniform(160, 280)]
  const thumps: OneRing[] = []
  const crunch = blankEnvelope(durationS)
  for (let step = 0; step < steps; step++) {
    const heelS = fromS + step * stepS * random.normal(1, 0.02)
    const nearness = 1 / (1 + ((step - steps / 2) / 3) ** 2)
    for (const [lagS, share] of [
      [0, 1],
      [random.uniform(0.09, 0.14), 0.5],
    ] as const) {
      const height = strength * nearness * share * 10 ** (random.normal(0, 2) / 20)
      for (const [m, pitchHz] of modes.entries())
        thumps.push({
          timeS: heelS + lagS,
          pitchHz: pitchHz * random.normal(1, 0.04),
          amplitude: (3 * height) / (1 + m),
          decayPerS: random.uniform(25, 60) * (1 + m),
        })
      addBurst(crunch, heelS + lagS, random.uniform(0.015, 0.04), height)
    }
  }
  const heard = thumps.filter((t) => t.timeS < durationS)
  parts.rings.push({ rings: toRings(heard), gain: clip.ground, areBubbles: false })
  parts.swelling.push({ psd: through(withPower(bump(500, 2500), 0.3), clip.ground), envelope: crunch })
}
