import type { Random } from '../../base/random'
import { ENVELOPE_STEP_S, type Parts } from '../clipSounds'
import { blankEnvelope, bump, type NuisanceClip, type OneRing, through, toRings, withPower } from './nuisanceClip'

/** Wind over the microphone: rumble falling steeply above 60 Hz, in gusts of a second or so. Shape and level chosen. */
export function addGusts(parts: Parts, clip: NuisanceClip): void {
  const level = clip.ambientPower * 10 ** (clip.random.uniform(4, 16) / 10)
  const psd = withPower((f) => 1 / (1 + (f / 60) ** 3.4), level)
  parts.swelling.push({ psd: through(psd, clip.air), envelope: wanderingEnvelope(clip.durationS, 0.8, clip.random) })
}

/** A car or lorry passes: low noise that swells and fades once. Shape and level chosen. */
export function addTraffic(parts: Parts, clip: NuisanceClip): void {
  const { random } = clip
  const level = clip.ambientPower * 10 ** (random.uniform(3, 13) / 10)
  const envelope = blankEnvelope(clip.durationS)
  const nearestS = random.uniform(0, clip.durationS)
  const widthS = random.uniform(1, 3)
  for (let i = 0; i < envelope.length; i++) envelope[i] = 1 / (1 + ((i * ENVELOPE_STEP_S - nearestS) / widthS) ** 2)
  parts.swelling.push({ psd: through(withPower(bump(45, 200), level), clip.ground), envelope })
}

/** Rain: a bed of hiss, and drops that tick close by. Shape and level chosen. */
export function addRain(parts: Parts, clip: NuisanceClip): void {
  const { random } = clip
  const level = clip.ambientPower * 10 ** (random.uniform(-12, 0) / 10)
  const bed = through(withPower(bump(1200, 6000), level), clip.air)
  for (let g = 0; g < bed.length; g++) parts.steadyPsd[g]! += bed[g]!
  const drops: OneRing[] = []
  const ratePerS = random.uniform(5, 25)
  for (let timeS = 0; timeS < clip.durationS; timeS += random.exponential(ratePerS))
    drops.push({
      timeS,
      pitchHz: random.logUniform(900, 5000),
      amplitude: 2 * Math.sqrt(level) * 10 ** (random.normal(0, 4) / 20),
      decayPerS: random.uniform(700, 2000),
    })
  parts.rings.push({ rings: toRings(drops), gain: clip.air, areBubbles: false })
}

/** Amplitude that wanders between 0 and about 1.5 with a typical time, by random knots joined smoothly. */
export function wanderingEnvelope(durationS: number, knotS: number, random: Random): Float32Array {
  const envelope = blankEnvelope(durationS)
  const knots = Array.from({ length: Math.ceil(durationS / knotS) + 2 }, () => random.uniform() ** 1.5 * 1.5)
  for (let i = 0; i < envelope.length; i++) {
    const place = (i * ENVELOPE_STEP_S) / knotS
    const k = Math.floor(place)
    const t = place - k
    const ease = t * t * (3 - 2 * t)
    envelope[i] = knots[k]! + (knots[k + 1]! - knots[k]!) * ease
  }
  return envelope
}
