import type { Chirp, Parts } from '../clipSounds'
import { type NuisanceClip, through, withPower } from './nuisanceClip'

/** First two resonances of five vowels, Hz, rounded from any phonetics table (from memory). */
const VOWELS = [
  [730, 1090],
  [530, 1840],
  [270, 2290],
  [570, 840],
  [300, 870],
] as const

/** Somebody talks nearby: syllables four a second, each a gliding pitch through two vowel resonances. Levels chosen. */
export function addVoices(parts: Parts, clip: NuisanceClip): void {
  const { random } = clip
  const level = clip.ambientPower * 10 ** (random.uniform(-8, 8) / 10)
  const pitchHz = random.logUniform(95, 220)
  let timeS = random.uniform(0, clip.durationS * 0.4)
  const lastS = Math.min(clip.durationS, timeS + random.uniform(1, 4))
  while (timeS < lastS) {
    const [first, second] = random.pick(VOWELS)
    const shape = (f: number) => (resonance(f, first, 90) + 0.5 * resonance(f, second, 130)) / (1 + (f / 700) ** 2)
    const durationS = random.uniform(0.12, 0.28)
    const startHz = pitchHz * random.uniform(0.9, 1.2)
    parts.voices.push({
      timeS,
      durationS,
      startHz,
      endHz: startHz * random.uniform(0.85, 1.1),
      psd: through(withPower(shape, level * random.uniform(0.4, 1)), clip.air),
    })
    timeS += durationS + random.uniform(0.02, random.chance(0.2) ? 0.5 : 0.1)
  }
}

function resonance(f: number, centreHz: number, widthHz: number): number {
  return 1 / (1 + ((f - centreHz) / widthHz) ** 2)
}

/** Birds: short whistled glides above 2.5 kHz, through the air. Levels chosen. */
export function addBirds(parts: Parts, clip: NuisanceClip): void {
  const { random } = clip
  const amplitude = Math.sqrt(2 * clip.ambientPower) * 10 ** (random.uniform(-14, 2) / 20)
  const songHz = random.logUniform(2800, 5500)
  let timeS = random.uniform(0, 1)
  while (timeS < clip.durationS) {
    const notes = random.integer(2, 7)
    for (let n = 0; n < notes; n++) {
      parts.chirps.push(note(timeS, songHz, amplitude, clip))
      timeS += random.uniform(0.08, 0.2)
    }
    timeS += random.uniform(0.4, 2)
  }
}

function note(timeS: number, songHz: number, amplitude: number, { random }: NuisanceClip): Chirp {
  const startHz = songHz * random.uniform(0.9, 1.2)
  return {
    timeS,
    durationS: random.uniform(0.04, 0.12),
    startHz,
    endHz: startHz * random.uniform(0.85, 1.25),
    amplitude,
  }
}
