import { realSound } from '../../support/realSounds'
import { CATALOGUE, type CatalogueSound } from '../../support/realSounds/catalogue'
import { inNoise, pinkNoise, throughSoil } from '../../support/realSounds/scenes'
import { type HeardClip, hearSound } from './hearSound'

/** Kinds that are the same physics as a leak: there the air-off clip decides. */
export const WATER = ['bubbling', 'falling-water', 'hiss'] as const

const CLIP_S = 6
const MOST_CLIPS = 5
/** How an ordinary sound comes to a ground microphone: loss of the soil, dB per kHz, `null` for none; and dB over pink noise. */
type Scene = readonly [lossDbPerKhz: number | null, snrDb: number]
/** What it is judged in; it learns in these and in more. Chosen. */
const SCENES: Readonly<Record<CatalogueSound['part'], readonly Scene[]>> = {
  held: [
    [null, 25],
    [5, 20],
    [20, 20],
    [20, 10],
  ],
  tune: [
    [null, 40],
    [null, 25],
    [null, 15],
    [2, 25],
    [2, 10],
    [5, 20],
    [10, 30],
    [10, 15],
    [10, 5],
    [20, 30],
    [20, 20],
    [20, 10],
    [40, 15],
  ],
}

/** Clips of six seconds of an ordinary sound of the catalogue, as it is and through soil, in noise; labelled no leak. */
export async function hearRealSound(name: string): Promise<HeardClip[]> {
  const sound = CATALOGUE.find((each) => each.name === name)!
  const { samples, sampleRateHz } = await realSound(sound.name)
  const length = Math.min(samples.length, CLIP_S * sampleRateHz)
  const count = Math.max(1, Math.min(MOST_CLIPS, Math.floor(samples.length / length)))
  return Array.from({ length: count }, (_, i) => samples.subarray(i * length, (i + 1) * length)).flatMap((part, i) =>
    SCENES[sound.part].flatMap(([lossDbPerKhz, snrDb]) => {
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
