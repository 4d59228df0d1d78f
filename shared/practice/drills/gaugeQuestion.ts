import type { Random } from '../../base/random'
import { ATMOSPHERE_PA } from '../../base/units'
import type { HoldTest } from '../../pressure/gaugeLog'
import { type HoldJudgement, judgeHold } from '../../pressure/judgeHold'
import { lineComplianceM3PerPa, lineVolumeM3 } from '../../pressure/lineCompliance'
import { pipeSize } from '../../pressure/pipeSizes'
import { PIPE_WALLS } from '../../pressure/pipeWalls'
import { readGauge, type SimulatedLine, simulatedPressuresPa } from '../../pressure/simulateHold'
import { airComplianceM3PerPa } from '../../pressure/trappedAir'
import { GAUGE_KINDS, type GaugeKind, type MachineSaid, type Question, type QuestionOrder } from './question'

/** Ten minutes, read once a minute, on a gauge of half a kilopascal. Chosen. */
const READ_AT_S = Array.from({ length: 11 }, (_, i) => 60 * i)
const HELD_S = 600
const STEP_KPA = 0.5
const STEP_PA = 1000 * STEP_KPA
const LET_OUT_ML = 2

/**
 * A simulated hold test to be read. The level is what there is to be seen over one step of the gauge: the fall of a leak or
 * of a plug, the rise by warming; for trapped air, how many times softer than full of water the line is, less one.
 */
export function gaugeQuestion(order: QuestionOrder, random: Random): Question {
  const truth = random.pick(GAUGE_KINDS)
  const steps = 10 ** (order.levelDb / 20)
  const line = lineOf(truth, steps, random)
  const pressures = simulatedPressuresPa(line, READ_AT_S)
  const test: HoldTest = {
    unit: 'kPa',
    resolution: STEP_KPA,
    readings: readGauge(
      random,
      { unit: 'kPa', resolution: STEP_KPA, noiseSteps: 0.15 },
      READ_AT_S.map((timeS, i) => ({ timeS, pa: pressures[i]! })),
    ),
    rules: { leastKpa: 65, mostKpa: 90, leastHoldS: 300 },
    cameUp: true,
    startTemperatureC: thermometer(line.temperatureC(0)),
    endTemperatureC: thermometer(line.temperatureC(HELD_S)),
    fittings: [
      { id: 'a', name: 'A', state: 'tight', by: 'dye under water' },
      { id: 'b', name: 'B', state: truth === 'weeping plug' ? 'weeping' : 'tight', by: 'dye under water' },
    ],
  }
  const full = lineComplianceM3PerPa(line)
  const kpaFor = (compliance: number) => (LET_OUT_ML * 1e-6) / compliance / 1000
  const gauge = {
    test,
    letOutMl: LET_OUT_ML,
    fullLineKpa: kpaFor(full),
    thisLineKpa: kpaFor(full + airComplianceM3PerPa(line.airM3, line.startPa)),
  }
  return { order, truth, clips: [], gauge, machine: machineOnGauge(judgeHold(test, line), truth) }
}

function lineOf(kind: GaugeKind, steps: number, random: Random): SimulatedLine {
  const baseC = random.uniform(16, 22)
  const still: SimulatedLine = {
    size: pipeSize(random.pick([1.5, 2]))!,
    wall: PIPE_WALLS.pvc,
    lengthM: random.uniform(12, 30),
    airM3: 0,
    leakDiameterM: 0,
    weepDiameterM: 0,
    startPa: random.uniform(73e3, 82e3),
    temperatureC: () => baseC,
  }
  if (kind === 'leak') return { ...still, leakDiameterM: holeFor(still, steps) }
  if (kind === 'weeping plug') return { ...still, weepDiameterM: holeFor(still, steps) }
  if (kind === 'warming') return warmed(still, steps, baseC)
  if (kind === 'tight') return still
  // Boyle's air gives V₀·p₀/p²: so much of it that the line is `steps` times softer, and it is tight.
  const airM3 = (steps * lineComplianceM3PerPa(still) * (still.startPa + ATMOSPHERE_PA) ** 2) / ATMOSPHERE_PA
  return { ...still, airM3: Math.min(airM3, lineVolumeM3(still) / 2) }
}

/** The hole that lowers the gauge by so many steps, at most to a fifth of where it began. */
function holeFor(still: SimulatedLine, steps: number): number {
  const wantedPa = Math.min(steps * STEP_PA, 0.8 * still.startPa)
  let diameterM = 1e-5
  for (let i = 0; i < 40; i++) {
    const [pa] = simulatedPressuresPa({ ...still, leakDiameterM: diameterM }, [HELD_S])
    const ratio = wantedPa / Math.max(1e-6, still.startPa - pa!)
    if (Math.abs(ratio - 1) < 1e-3) break
    diameterM *= Math.min(3, Math.max(0.3, ratio)) ** 0.45
  }
  return diameterM
}

/** Sun on the line: it warms evenly until the gauge has risen by so many steps. */
function warmed(still: SimulatedLine, steps: number, baseC: number): SimulatedLine {
  const at = (degrees: number): SimulatedLine => ({
    ...still,
    temperatureC: (timeS) => baseC + (degrees * timeS) / HELD_S,
  })
  let degrees = 0.01
  for (let i = 0; i < 6; i++) {
    const [pa] = simulatedPressuresPa(at(degrees), [HELD_S])
    const ratio = (steps * STEP_PA) / Math.abs(pa! - still.startPa)
    degrees = Math.min(6, degrees * ratio)
  }
  return at(degrees)
}

function thermometer(celsius: number): number {
  return Math.round(celsius * 10) / 10
}

/** What the judge of the screen Pressure says. Trapped air it does not tell by itself, and it never says so. */
function machineOnGauge({ verdict, dropOf }: HoldJudgement, truth: GaugeKind): MachineSaid {
  const right = {
    tight: verdict === 'holds',
    leak: verdict === 'drops' && dropOf === 'line',
    'weeping plug': verdict === 'drops' && dropOf === 'weeping fitting',
    warming: verdict === 'cannot tell',
    'trapped air': false,
  }[truth]
  return { said: verdict, right, bubbling: null, errorSpacings: null }
}
