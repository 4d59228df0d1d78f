import { realSound } from '../../support/realSounds'
import type { CatalogueSound } from '../../support/realSounds/catalogue'
import { inNoise, pinkNoise, throughSoil } from '../../support/realSounds/scenes'
import { type HeardClip, hearSound } from './hearSound'

/** Kinds that are the same physics as a leak: there the air-off clip decides. */
export const WATER = ['bubbling', 'falling-water', 'hiss'] as const

const CLIP_S = 6
const MOST_CLIPS = 5
/** Loss of the soil (dB per kHz) and signal over pink noise (dB): as an ordinary sound comes to a ground microphone. */
const SCENES = [
  [null, 25],
  [5, 20],
  [20, 20],
  [20, 10],
] as const

/** Clips of six seconds of an ordinary sound, as it is and through soil, in noise; labelled no leak. */
export async function hearRealSound(sound: CatalogueSound): Promise<HeardClip[]> {
  const { samples, sampleRateHz } = await realSound(sound.name)
  const length = Math.min(samples.length, CLIP_S * sampleRateHz)
  const count = Math.max(1, Math.min(MOST_CLIPS, Math.floor(samples.length / length)))
  return Array.from({ length: count }, (_, i) => samples.subarray(i * length, (i + 1) * length)).flatMap((part, i) =>
    SCENES.flatMap(([lossDbPerKhz, snrDb]) => {
      const soft = lossDbPerKhz === null ? part : throughSoil(part, sampleRateHz, lossDbPerKhz)
      const mixed = inNoise(soft, pinkNoise(part.length, `${sound.name}/${i}`), sampleRateHz, snrDb)
      const clip = { channels: [mixed], sampleRateHz, encoding: { kind: 'decoded', bits: 32 }, problems: [] } as const
      const heard = hearSound(clip, {
        name: `${sound.name}/${i}/${lossDbPerKhz}/${snrDb}`,
        job: sound.name,
        device: '',
        cover: '',
        isLeak: false,
        kind: sound.kind,
      })
      return heard === null ? [] : [heard]
    }),
  )
}
