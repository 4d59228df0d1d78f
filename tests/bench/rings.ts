/**
 * The ring finder over every real sound, as it is and through soil in noise:
 *
 *     npx tsx tests/bench/rings.ts
 *
 * Fetches 220 MB of Debian packages the first time. Prints a row a sound, how well bubbly water stands apart from everything
 * else (for the sounds it was tuned on and for those it never saw), rings planted by formula, and the cost.
 */
import { Random } from '../../shared/base/random'
import { quantile } from '../../shared/base/statistics'
import { bubblingFrom } from '../../shared/bubbles/bubblingFrom'
import { findRings } from '../../shared/bubbles/findRings'
import type { RingSummary } from '../../shared/bubbles/ring'
import { summariseRings } from '../../shared/bubbles/summariseRings'
import { addRing, freeRing, whiteNoise } from '../support/plantedRings'
import { realSound } from '../support/realSounds'
import { CATALOGUE, type CatalogueSound } from '../support/realSounds/catalogue'
import { inNoise, pinkNoise, throughSoil } from '../support/realSounds/scenes'

/** Long recordings are judged by so much of them, s. */
const LONGEST_S = 20

/** Name, loss of the soil (dB per kHz), signal over noise (dB). `null`: none. */
const WATER_SCENES = [
  ['as recorded', null, null],
  ['light soil, +10 dB', 5, 10],
  ['soil, +20 dB', 20, 20],
  ['soil, +10 dB', 20, 10],
  ['soil, +5 dB', 20, 5],
  ['soil, 0 dB', 20, 0],
  ['heavy soil, +10 dB', 38, 10],
] as const
const OTHER_SCENES = [
  ['as recorded', null, null],
  ['+25 dB', null, 25],
  ['soil, +20 dB', 20, 20],
  ['soil, +5 dB', 20, 5],
] as const

interface Heard {
  readonly sound: CatalogueSound
  readonly scene: string
  readonly summary: RingSummary
  readonly bubbling: number
}

async function main() {
  const heard: Heard[] = []
  const cost = { listenedS: 0, cpuMs: 0 }
  for (const sound of CATALOGUE) {
    const clip = await realSound(sound.name)
    const samples = clip.samples.subarray(0, LONGEST_S * clip.sampleRateHz)
    for (const scene of sound.kind === 'bubbling' ? WATER_SCENES : OTHER_SCENES) {
      const mixed = mix(samples, clip.sampleRateHz, sound.name, scene)
      const before = process.cpuUsage().user
      const summary = summariseRings(findRings(mixed, clip.sampleRateHz))
      cost.cpuMs += (process.cpuUsage().user - before) / 1000
      cost.listenedS += mixed.length / clip.sampleRateHz
      heard.push({ sound, scene: scene[0], summary, bubbling: bubblingFrom(summary) })
    }
  }
  printSounds(heard.filter(({ scene }) => scene === 'as recorded'))
  printSeparation(heard)
  printNoise()
  printPlanted()
  console.log(
    `\ncost: ${(cost.cpuMs / cost.listenedS).toFixed(2)} ms of one core a second of sound, as the sounds come`,
  )
}

function mix(
  samples: Float32Array,
  sampleRateHz: number,
  seed: string,
  scene: (typeof WATER_SCENES | typeof OTHER_SCENES)[number],
) {
  const [, lossDbPerKhz, snrDb] = scene
  const sound = lossDbPerKhz === null ? samples : throughSoil(samples, sampleRateHz, lossDbPerKhz)
  return snrDb === null ? sound : inNoise(sound, pinkNoise(samples.length, seed), sampleRateHz, snrDb)
}

function printSounds(heard: readonly Heard[]) {
  const medianOf = (kind: string) =>
    quantile(
      heard.filter((h) => h.sound.kind === kind).map((h) => h.bubbling),
      0.5,
    )
  const kinds = [...new Set(heard.map((h) => h.sound.kind))].sort((a, b) => medianOf(b) - medianOf(a))
  console.log('sound                 part  rings/s share pitch Hz spread oct tonality regular slug Hz bubbling')
  for (const kind of kinds) {
    console.log(`-- ${kind}, median bubbling ${medianOf(kind).toFixed(2)}`)
    const rows = heard.filter((h) => h.sound.kind === kind).sort((a, b) => b.bubbling - a.bubbling)
    for (const { sound, summary, bubbling } of rows) {
      const cells = [
        summary.ratePerS.toFixed(1).padStart(7),
        shown(summary.ringShare, 2, 5),
        shown(summary.medianPitchHz, 0, 8),
        shown(summary.pitchSpreadOctaves, 2, 10),
        shown(summary.tonality, 2, 8),
        shown(summary.regularity, 2, 7),
        shown(summary.slugRateHz, 2, 7),
        bubbling.toFixed(2).padStart(8),
      ]
      console.log(`${sound.name.padEnd(21)} ${sound.part.padEnd(5)} ${cells.join(' ')}`)
    }
  }
}

function printSeparation(heard: readonly Heard[]) {
  console.log('\nbubbly water against all other sounds in all their scenes (falling water counts with neither)')
  for (const part of ['tune', 'held'] as const) {
    const mine = heard.filter((h) => h.sound.part === part)
    const others = mine.filter((h) => h.sound.kind !== 'bubbling' && h.sound.kind !== 'falling-water')
    const bubbling = others.map((h) => h.bubbling)
    const rates = others.map((h) => h.summary.ratePerS)
    console.log(
      `${part === 'tune' ? 'tuned on' : 'never seen'}: ${others.length} clips of ${new Set(others.map((h) => h.sound.name)).size} other sounds`,
    )
    console.log(
      `  rings/s       median ${at(rates, 0.5)}  9 in 10 under ${at(rates, 0.9)}  19 in 20 under ${at(rates, 0.95)}`,
    )
    console.log(
      `  bubbling      median ${at(bubbling, 0.5)}  9 in 10 under ${at(bubbling, 0.9)}  19 in 20 under ${at(bubbling, 0.95)}`,
    )
    console.log('  water                 sounds  rings/s median (least)  bubbling median (least)  AUC of bubbling')
    for (const [scene] of WATER_SCENES) {
      const water = mine.filter((h) => h.sound.kind === 'bubbling' && h.scene === scene)
      const waterRates = water.map((h) => h.summary.ratePerS)
      const waterBubbling = water.map((h) => h.bubbling)
      console.log(
        `  ${scene.padEnd(20)} ${String(water.length).padStart(7)}  ${at(waterRates, 0.5).padStart(14)} (${at(waterRates, 0)})` +
          `  ${at(waterBubbling, 0.5).padStart(15)} (${at(waterBubbling, 0)})  ${areaUnderCurve(waterBubbling, bubbling).toFixed(3).padStart(15)}`,
      )
    }
  }
}

/** Even noise of several colours, and noise in gusts. */
function printNoise() {
  const seconds = 30
  const rate = 48_000
  const white = whiteNoise(seconds * rate, new Random('white'))
  const pink = pinkNoise(seconds * rate, 'pink')
  const gusts = pink.map(
    (value, i) => value * Math.exp(Math.sin((2 * Math.PI * 0.7 * i) / rate) + Math.sin((2 * Math.PI * 1.9 * i) / rate)),
  )
  const noises = { white, pink, 'white through soil': throughSoil(white, rate, 20), 'pink in gusts': gusts }
  console.log('\nnoise                 rings/s  bursts/s')
  for (const [name, samples] of Object.entries(noises)) {
    const { ratePerS, burstRatePerS } = summariseRings(findRings(samples, rate))
    console.log(`${name.padEnd(21)} ${ratePerS.toFixed(2).padStart(7)} ${burstRatePerS.toFixed(1).padStart(9)}`)
  }
}

/** Rings of free bubbles planted in white noise, by the ratio of a ring's energy to the noise's power density. */
function printPlanted() {
  const rate = 48_000
  const count = 60
  console.log('\nplanted rings found, of 60, by energy over noise density: dB')
  console.log(`pitch Hz ${[12, 14, 16, 18, 20, 25].map((db) => String(db).padStart(6)).join('')}`)
  for (const pitchHz of [180, 300, 500, 800, 1200, 2000, 2900]) {
    const cells = [12, 14, 16, 18, 20, 25].map((db) => {
      const random = new Random(`planted/${pitchHz}/${db}`)
      const samples = whiteNoise(0.5 * (count + 1) * rate, random)
      const times = Array.from({ length: count }, (_, i) => 0.25 + 0.5 * i + random.uniform(0, 0.1))
      for (const timeS of times) addRing(samples, rate, freeRing(timeS, pitchHz, db, 2 / rate))
      const { rings } = findRings(samples, rate)
      const found = times.filter((t) =>
        rings.some((r) => Math.abs(r.timeS - t) < 0.01 && Math.abs(r.pitchHz / pitchHz - 1) < 0.06),
      )
      return String(found.length).padStart(6)
    })
    console.log(`${String(pitchHz).padStart(8)} ${cells.join('')}`)
  }
}

/** Chance that one of `high` stands above one of `low`; ties count half. */
function areaUnderCurve(high: readonly number[], low: readonly number[]): number {
  let wins = 0
  for (const a of high) for (const b of low) wins += a > b ? 1 : a === b ? 0.5 : 0
  return wins / (high.length * low.length)
}

function at(values: readonly number[], probability: number): string {
  return quantile(values, probability).toFixed(2)
}

function shown(value: number | null, digits: number, width: number): string {
  return (value === null ? '-' : value.toFixed(digits)).padStart(width)
}

main()
