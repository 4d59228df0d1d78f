import type { Random } from '../base/random'
import { type BubbleTrain, type Slugs, slugDuty, trainPsd } from './bubbleTrain'
import type { Family } from './families'
import { GRID_COUNT, totalPower } from './grid'
import { bump, withPower } from './nuisances/nuisanceClip'
import type { Emitter, Tone } from './yard'

/** Total mean power of a spectrum's emitter before it is scaled: the scale is solved for afterwards. */
const UNIT_POWER = 1

/** A leak that bubbles and hisses; its level is still to be solved for. */
export function drawLeak(family: Family, alongM: number, depthM: number, random: Random): Emitter {
  const bubbles: BubbleTrain = {
    ratePerS: random.logUniform(6, 60),
    arrival: random.chance(0.7) ? 'broken' : 'orifice',
    medianRadiusM: random.logUniform(0.002, 0.005),
    radiusSpread: random.uniform(0.15, 0.45),
    excitationSdDb: 4,
    amplitude: 1,
  }
  const slugs: Slugs | null = random.chance(family.slugShare)
    ? { shortestOnS: 1, longestOnS: 4, shortestOffS: 2, longestOffS: 8 }
    : null
  const bubblePower = totalPower(trainPsd(bubbles))
  const hissPower = bubblePower * 10 ** (random.uniform(-18, 0) / 10)
  const cornerHz = random.logUniform(300, 1500)
  return {
    kind: 'leak',
    alongM,
    offsetM: 0,
    depthM,
    bubbles,
    slugs,
    hissPsd: withPower(bump(120, cornerHz), hissPower),
    tones: [],
    pipeDb: random.uniform(...family.pipeDb),
    movesFromM: null,
    sounds: 'with air',
  }
}

/** Where air is let in: a steady hiss near the surface, some of which also runs along the pipe. */
export function drawInlet(leak: Emitter | null, alongM: number, family: Family, random: Random): Emitter {
  return {
    kind: 'inlet',
    alongM,
    offsetM: random.uniform(-0.3, 0.3),
    depthM: random.uniform(0.05, 0.2),
    bubbles: null,
    slugs: null,
    hissPsd: withPower(bump(random.logUniform(200, 600), random.logUniform(1500, 4000)), UNIT_POWER),
    tones: [],
    pipeDb: leak?.pipeDb ?? random.uniform(...family.pipeDb),
    movesFromM: null,
    sounds: 'with air',
  }
}

/** Air on its way from the inlet: larger, rarer bubbles at a few places that change from clip to clip. */
export function drawMovingAir(inletM: number, leak: Emitter, random: Random): Emitter {
  return {
    ...leak,
    kind: 'moving',
    bubbles: {
      ratePerS: random.logUniform(3, 15),
      arrival: 'broken',
      medianRadiusM: random.logUniform(0.003, 0.006),
      radiusSpread: 0.3,
      excitationSdDb: 4,
      amplitude: 1,
    },
    slugs: null,
    hissPsd: null,
    pipeDb: null,
    movesFromM: inletM,
  }
}

/** A machine beside the line: a comb of its mains or shaft frequency and a broad hum. Levels within it are chosen. */
export function drawMachine(alongM: number, offsetM: number, random: Random): Emitter {
  const fundamentalHz = random.pick([49.9, 50, 59.9, 60, random.uniform(23, 29)])
  const fallDb = random.uniform(1.5, 5)
  const tones: Tone[] = Array.from({ length: 12 }, (_, h) => ({
    frequencyHz: fundamentalHz * (h + 1),
    power: 10 ** ((-fallDb * h + random.normal(0, 4)) / 10),
  }))
  return {
    kind: 'noise',
    alongM,
    offsetM,
    depthM: 0.1,
    bubbles: null,
    slugs: null,
    hissPsd: withPower(bump(100, random.logUniform(400, 1500)), random.uniform(0.3, 3)),
    tones,
    pipeDb: null,
    movesFromM: null,
    sounds: 'always',
  }
}

/** Mean power per hertz of an emitter at 1 m, over time, tones left out. */
export function meanPsd(emitter: Emitter): Float64Array {
  const psd = emitter.bubbles === null ? new Float64Array(GRID_COUNT) : trainPsd(emitter.bubbles)
  const duty = emitter.slugs === null ? 1 : slugDuty(emitter.slugs)
  return psd.map((p, g) => duty * (p + (emitter.hissPsd?.[g] ?? 0)))
}

/** The same emitter, so many times as powerful. */
export function scaled(emitter: Emitter, factor: number): Emitter {
  return {
    ...emitter,
    bubbles: emitter.bubbles && { ...emitter.bubbles, amplitude: emitter.bubbles.amplitude * Math.sqrt(factor) },
    hissPsd: emitter.hissPsd?.map((p) => p * factor) ?? null,
    tones: emitter.tones.map((tone) => ({ ...tone, power: tone.power * factor })),
  }
}
