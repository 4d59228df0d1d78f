import { logSumExp } from '../base/statistics'
import { type GroundPrior, groundPrior } from '../ground/groundPrior'
import { depthAt } from '../line/depthAt'
import type { Cover, Line } from '../line/line'
import type { Sounding } from './answer'
import { type FitModel, FLOOR_HABITS, type FloorHabit, fitModel } from './fitModel'
import { type Fit, fitSources } from './fitSources'
import { knownSources } from './knownSources'
import { logRingLikelihood } from './ringEvidence'
import { coldPass, type Scan, type ScanInput, scanLine, tryPlace } from './scanLine'
import { secondSource, type TwoSources } from './secondSource'
import { isUsable, settingsDown, weighedBands } from './settingsDown'
import type { TriedSource } from './triedSource'
import { untoldInlet } from './untoldInlet'

/** The plainest habit of the floor is taken unless another is so much likelier, nepers. Chosen. */
const HABIT_NEPERS = 5

/** Where a sweep's source is searched. */
export interface SearchFrame {
  /** First and last place of the line, m along. */
  readonly range: readonly [number, number]
  readonly spacingM: number
  readonly grid: Float64Array
}

/** The joint fit of a sweep, with and without a leak. */
export interface FittedSweep {
  /** As told; with the air inlet where it is heard when none was told. */
  readonly line: Line
  readonly model: FitModel
  readonly known: readonly TriedSource[]
  /** For the first leak. */
  readonly scan: Scan
  readonly two: TwoSources | null
  /** ln of the evidence without a leak. */
  readonly logNone: number
  /** How much better the ring counts fit with what was found than without a leak, nepers. */
  readonly ringSupport: number
  readonly detectorSupport: number
}

/** ln of the odds of a habit of the floor against the plainest; the scan's evidence stands without its habit's. */
function logHabitPrior(floor: FloorHabit): number {
  return floor === FLOOR_HABITS.at(-1) ? 0 : -HABIT_NEPERS
}

/**
 * The joint fit of a sweep with and without a leak.
 *
 * @param line      As told. @param soundings At least one of them usable.
 * @param frame     Where to search.
 */
export function fitSweep(line: Line, soundings: readonly Sounding[], frame: SearchFrame): FittedSweep {
  const plain = modelOf(soundings, line)
  const heard = hear(line, plain, frame)
  if (line.airInletM !== null) return compare(heard)
  const airInletM = untoldInlet(heard.where, heard.scan)
  return compare(airInletM === null ? heard : hear({ ...line, airInletM }, plain, frame))
}

function modelOf(soundings: readonly Sounding[], line: Line): FitModel {
  const sweeps = [...new Set(soundings.filter(isUsable).map((sounding) => sounding.row.sweep))].sort()
  const anyEvidence = soundings.find(isUsable)!.evidence!
  return fitModel(
    settingsDown(soundings, line, sweeps),
    weighedBands(anyEvidence).map((band) => band.midHz),
    sweeps.length,
  )
}

interface Heard {
  /** Before it was seen how levels scatter. */
  readonly plain: FitModel
  readonly where: ScanInput
  readonly ground: GroundPrior
  readonly noLeak: Fit
  readonly scan: Scan
}

/** One leak all along the line, levels scattering as the best of the cold starts shows. */
function hear(line: Line, plain: FitModel, frame: SearchFrame): Heard {
  const known = knownSources(line, plain)
  const where = { line, ...frame, known }
  const middle = (frame.range[0] + frame.range[1]) / 2
  const ground = groundPrior(commonCover(plain), depthAt(line, middle).told)
  const noLeak = fitSources(plain, known, ground, 'with pipe')
  const cold = coldPass({ model: plain, ...where })
  const first = cold.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a))
  const models = FLOOR_HABITS.map((floor) => ({ ...plain, noise: { ...first.fit.noise(), floor } }))
  const logHabits = models.map((each) => tryPlace({ model: each, ...where }, first.alongM, first.fit).logEvidence)
  const weighed = models.map(({ noise }, i) => logHabits[i]! + logHabitPrior(noise.floor))
  const model = models[weighed.indexOf(Math.max(...weighed))]!
  return { plain, where: { model, ...where }, ground, noLeak, scan: scanLine({ model, ...where }, cold) }
}

/** Against a second leak and against none. */
function compare({ plain, where, ground, noLeak, scan }: Heard): FittedSweep {
  const { line, model, known } = where
  const two = secondSource(where, scan)
  // How levels scatter without a leak is not known beforehand: as with one, or as they did without, by each habit.
  const logNones = [model.noise, ...FLOOR_HABITS.map((floor) => ({ ...noLeak.noise(), floor }))].map(
    (noise) => fitSources({ ...plain, noise }, known, ground, noLeak).logEvidence + logHabitPrior(noise.floor),
  )
  const ringsNone = logRingLikelihood(model.settings, [])
  const best = scan.tried.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a))
  return {
    line,
    model,
    known,
    scan: two === null ? scan : withSecond(scan, two),
    two,
    logNone: logSumExp(logNones) - Math.log(logNones.length) - logHabitPrior(model.noise.floor) + ringsNone,
    ringSupport: (two?.logRings ?? best.logRings) - ringsNone,
    detectorSupport: two?.logDetector ?? best.logDetector,
  }
}

/** The scan for the first of two leaks: where it lies with the second held, and the evidence of one or two. */
function withSecond(one: Scan, { firstPerM, probability }: TwoSources): Scan {
  return { tried: one.tried, perM: firstPerM, logEvidence: one.logEvidence - Math.log(Math.max(1e-9, 1 - probability)) }
}

/** The cover of most settings-down; of equals, the first in alphabet. */
function commonCover({ stretchCovers, stretchOf }: FitModel): Cover {
  const counts = new Map<Cover, number>()
  for (const stretch of stretchOf) counts.set(stretchCovers[stretch]!, (counts.get(stretchCovers[stretch]!) ?? 0) + 1)
  return [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1))[0]![0]
}
