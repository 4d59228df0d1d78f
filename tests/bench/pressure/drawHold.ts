import type { Random } from '../../../shared/base/random'
import type { HoldTest } from '../../../shared/pressure/gaugeLog'
import { pipeSize } from '../../../shared/pressure/pipeSizes'
import { PIPE_WALLS } from '../../../shared/pressure/pipeWalls'
import { KPA_PER } from '../../../shared/pressure/pressureUnit'
import {
  readGauge,
  type SimulatedGauge,
  type SimulatedLine,
  simulatedPressuresPa,
} from '../../../shared/pressure/simulateHold'
import type { KnownPipe } from '../../../shared/pressure/temperatureEffect'

/**
 * What a simulated test is about. Falls are in steps of the gauge over the hold, the leak's alone.
 *
 * `leak`: 1.5 to 10 steps, temperature moves the gauge by at most a quarter step. `least leak`: 1.5 steps just, warmed by a
 * quarter step. `large leak`: from 3 steps.
 * `entered`: the leak with a drift that a thermometer of 0.1 °C showed. `bent`: the leak with a drift that dies out and leaves
 * its own chord by at least one step. `tight`: no leak, at most a quarter step of drift. `cancelled`: a drift that takes the leak
 * away all through the hold. `weep`: a plug that weeps, the line tight. `cooling`: no leak, and a drift as in `bent`.
 */
export const HOLD_KINDS = [
  'leak',
  'least leak',
  'large leak',
  'entered',
  'bent',
  'tight',
  'cancelled',
  'weep',
  'cooling',
] as const
export type HoldKind = (typeof HOLD_KINDS)[number]

export interface DrawnHold {
  readonly test: HoldTest
  readonly pipe: KnownPipe
  readonly kind: HoldKind
  /** Of the leak alone, and of the drift alone, in steps. */
  readonly leakSteps: number
  readonly driftSteps: number
  readonly readingCount: number
}

const GAUGES = [
  ['psi', 0.1],
  ['psi', 0.2],
  ['psi', 0.5],
  ['kPa', 0.5],
  ['kPa', 1],
  ['bar', 0.01],
] as const

/** Draws a line, a gauge, what happens to them, and the readings that somebody took. Everything here is invented. */
export function drawHold(random: Random, kind: HoldKind): DrawnHold {
  for (;;) {
    const drawn = tryHold(random, kind)
    if (drawn !== null) return drawn
  }
}

function tryHold(random: Random, kind: HoldKind): DrawnHold | null {
  const pipe = { size: pipeSize(random.pick([1, 1.5, 2]))!, wall: PIPE_WALLS.pvc }
  const [unit, resolution] = random.pick(GAUGES)
  const gauge: SimulatedGauge = { unit, resolution, noiseSteps: random.uniform(0.05, 0.3) }
  const stepPa = resolution * KPA_PER[unit] * 1000
  const atS = readingTimes(random)
  const endS = atS.at(-1)!
  const lengthM = random.logUniform(6, 60)
  const volumeM3 = (Math.PI / 4) * pipe.size.insideDiameterM ** 2 * lengthM
  const still: SimulatedLine = {
    ...pipe,
    lengthM,
    airM3: random.chance(0.3) ? 0 : volumeM3 * random.logUniform(1e-5, 2e-2),
    leakDiameterM: 0,
    weepDiameterM: 0,
    startPa: random.uniform(69e3, 83e3),
    temperatureC: () => 20,
  }
  const leakSteps = wantedLeakSteps(random, kind)
  if (leakSteps * stepPa > 0.8 * still.startPa) return null
  const holed = leakSteps === 0 ? 0 : holeFor(still, endS, leakSteps * stepPa)
  const leaking = kind === 'weep' ? { ...still, weepDiameterM: holed } : { ...still, leakDiameterM: holed }
  const drift = drawDrift(random, kind, { leaking, still, endS, stepPa, leakSteps })
  if (drift === null) return null
  const pressures = simulatedPressuresPa({ ...leaking, temperatureC: drift.temperatureC }, atS)
  const told = kind === 'entered'
  const thermometer = (timeS: number) => Math.round(drift.temperatureC(timeS) * 10) / 10
  if (told && thermometer(0) === thermometer(endS)) return null
  const test: HoldTest = {
    unit,
    resolution,
    readings: readGauge(
      random,
      gauge,
      atS.map((timeS, i) => ({ timeS, pa: pressures[i]! })),
    ),
    rules: { leastKpa: 65, mostKpa: 90, leastHoldS: 300 },
    cameUp: true,
    startTemperatureC: told ? thermometer(0) : null,
    endTemperatureC: told ? thermometer(endS) : null,
    fittings: [{ id: 'f', name: 'plug', state: 'tight', by: 'dye under water' }],
  }
  return { test, pipe, kind, leakSteps, driftSteps: drift.steps, readingCount: atS.length }
}

/** Tapped every few seconds, or typed about every minute; held for 5 to 15 minutes. */
function readingTimes(random: Random): number[] {
  const holdS = random.uniform(300, 900)
  const everyS = random.chance(0.7) ? random.uniform(5, 20) : random.uniform(20, 60)
  const count = Math.round(holdS / everyS)
  return Array.from({ length: count + 1 }, (_, i) =>
    i === 0 ? 0 : i === count ? holdS : holdS * ((i + random.uniform(-0.2, 0.2)) / count),
  )
}

/** The hole that alone lowers the pressure by so much; the fall grows with the hole's area, so a few steps of scaling do. */
function holeFor(still: SimulatedLine, endS: number, fallPa: number): number {
  let diameterM = 1e-5
  for (let i = 0; i < 60; i++) {
    const [pa] = simulatedPressuresPa({ ...still, leakDiameterM: diameterM }, [endS])
    const ratio = fallPa / Math.max(1e-6, still.startPa - pa!)
    diameterM *= Math.min(3, Math.max(0.3, ratio)) ** 0.45
    if (Math.abs(ratio - 1) < 1e-4) break
  }
  return diameterM
}

interface DriftScene {
  readonly leaking: SimulatedLine
  readonly still: SimulatedLine
  readonly endS: number
  readonly stepPa: number
  readonly leakSteps: number
}

interface Drift {
  readonly temperatureC: (timeS: number) => number
  /** What it alone does to the gauge over the hold. */
  readonly steps: number
}

function drawDrift(random: Random, kind: HoldKind, scene: DriftScene): Drift | null {
  const baseC = random.uniform(10, 28)
  const dyingOutS =
    scene.endS * (kind === 'bent' || kind === 'cooling' ? random.logUniform(0.1, 0.5) : random.logUniform(0.2, 5))
  const shape = (timeS: number) => (1 - Math.exp(-timeS / dyingOutS)) / (1 - Math.exp(-scene.endS / dyingOutS))
  const wanted = wantedSteps(random, kind, scene.leakSteps)
  const path = (degrees: number) => (timeS: number) =>
    baseC + degrees * (kind === 'cancelled' ? timeS / scene.endS : shape(timeS))
  const effect = (degrees: number) => {
    const [pa] = simulatedPressuresPa({ ...scene.still, temperatureC: path(degrees) }, [scene.endS])
    return (pa! - scene.still.startPa) / scene.stepPa
  }
  let degrees = 0.01
  for (let i = 0; i < 4; i++) degrees *= wanted / effect(degrees)
  // Near 15 °C a full plastic line hardly answers to warmth; no yard drifts by tens of degrees in minutes.
  if (!(Math.abs(degrees) < 8 && Math.abs(effect(degrees) - wanted) < 0.02 + 0.05 * Math.abs(wanted))) return null
  if ((kind === 'bent' || kind === 'cooling') && Math.abs(wanted) * mostOffChord(shape, scene.endS) < 1) return null
  return { temperatureC: path(degrees), steps: effect(degrees) }
}

function wantedLeakSteps(random: Random, kind: HoldKind): number {
  if (kind === 'tight' || kind === 'cooling') return 0
  return kind === 'least leak' ? 1.5 : random.logUniform(kind === 'large leak' ? 3 : 1.5, 10)
}

function wantedSteps(random: Random, kind: HoldKind, leakSteps: number): number {
  if (kind === 'cancelled') return leakSteps
  if (kind === 'least leak') return 0.25
  if (kind === 'cooling') return -random.logUniform(1.5, 20)
  if (kind !== 'entered' && kind !== 'bent') return random.uniform(-0.25, 0.25)
  // Half of them as bad as can be: what is left of the leak is about nothing.
  return random.chance(0.5) ? leakSteps + random.uniform(-1, 1) : random.uniform(-10, 10)
}

function mostOffChord(shape: (timeS: number) => number, endS: number): number {
  let most = 0
  for (let i = 1; i < 50; i++) most = Math.max(most, Math.abs(shape((i / 50) * endS) - i / 50))
  return most
}
