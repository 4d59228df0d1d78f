import type { Parts } from '../clipSounds'
import { type NuisanceClip, type OneRing, toRings } from './nuisanceClip'

/** A few hard knocks, on wood, stone or metal: inharmonic modes that all start together. Levels and modes are chosen. */
export function addKnocks(parts: Parts, clip: NuisanceClip): void {
  const { random } = clip
  const strength = Math.sqrt(clip.ambientPower) * 10 ** (random.uniform(10, 24) / 20)
  const lowestHz = random.logUniform(150, 700)
  const knocks: OneRing[] = []
  for (let n = random.integer(1, 4); n > 0; n--) {
    const timeS = random.uniform(0, clip.durationS)
    for (let mode = 0; mode < 5; mode++)
      knocks.push({
        timeS,
        pitchHz: lowestHz * (1 + mode * 1.37) * random.normal(1, 0.01),
        amplitude: (strength * random.uniform(0.5, 1)) / (1 + mode),
        decayPerS: random.uniform(60, 160) * (1 + mode * 0.7),
      })
  }
  parts.rings.push({ rings: toRings(knocks), gain: clip.ground, areBubbles: false })
}

/** A slow pump somewhere: thumps at 1 to 3 a second, all alike, on the ground's low modes. Levels and modes are chosen. */
export function addStrokes(parts: Parts, clip: NuisanceClip): void {
  const { random } = clip
  const strength = Math.sqrt(clip.ambientPower) * 10 ** (random.uniform(0, 12) / 20)
  const ratePerS = random.uniform(1, 3)
  const modes = [random.uniform(70, 120), random.uniform(150, 260), random.uniform(280, 420)]
  const strokes: OneRing[] = []
  for (let timeS = random.uniform(0, 1 / ratePerS); timeS < clip.durationS; timeS += 1 / ratePerS)
    for (const [m, pitchHz] of modes.entries())
      strokes.push({ timeS, pitchHz, amplitude: (2 * strength) / (1 + m), decayPerS: 18 * (1 + m) })
  parts.rings.push({ rings: toRings(strokes), gain: clip.ground, areBubbles: false })
}
