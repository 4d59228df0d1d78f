import type { GroundPrior } from '../ground/groundPrior'
import { type FitModel, type Noise, shapeLayout } from './fitModel'
import { keepInRange } from './keepInRange'
import { LevelModel } from './levelModel'
import { NormalEquations, OWN } from './normalEquations'
import type { Parameters } from './parameters'
import type { TriedSource } from './triedSource'

/** The best fit with its evidence. */
export interface Fit extends Parameters {
  /** ln of the probability of the levels given the places, everything else integrated out by Laplace's method. */
  readonly logEvidence: number
  /** rms of the weighted air-on residuals, dB. */
  readonly residualDb: number
  readonly converged: boolean
  /** How far the levels scatter round this fit. */
  readonly noise: () => Noise
  /** Of each leak, modelled at each setting-down in its best band against all but leaks there, dB. */
  readonly leaksOverFloorDb: readonly Float64Array[]
  /** Of the first leak; empty without. */
  readonly overFloorDb: Float64Array
}

/** Starts that need no other fit. */
export type ColdStart = 'with pipe' | 'without pipe'

/** So little that nothing comes along the pipe. */
const NO_PIPE_DB = -40
/** Most steps of a cold start in which no clip is taken for disturbed: far from its end every clip looks so. Chosen. */
const TRUSTING_STEPS = 8
const MOST_STEPS = 40
const MOST_DAMPING = 1e5
/** A step that gains less than this, in nepers, ends the fit, or the part of it that doubts no clip. Chosen: little beside a window's 2. */
const SETTLED = { doubting: 0.3, trusting: 3 }

/**
 * Fits sources at given places to all bands and settings-down at once.
 *
 * Gauss-Newton on the level model with Levenberg's damping, the settings-down's own numbers eliminated; the evidence by
 * Laplace's method, so that levels, ground, gains and tilts are integrated out rather than fixed.
 *
 * @param model   The sweep.
 * @param sources Places tried, leaks first.
 * @param ground  Prior of the ground at the leak.
 * @param start   Another fit of the same layout to start from, or where to begin with what the levels tell: as if sound
 *   also ran along the pipe, or as if it did not. The two can end in different explanations.
 * @param trusting Whether to take no clip for disturbed in the first steps; a cold start always does.
 */
export function fitSources(
  model: FitModel,
  sources: readonly TriedSource[],
  ground: GroundPrior,
  start: Parameters | ColdStart,
  trusting = typeof start === 'string',
): Fit {
  const levels = new LevelModel(model, sources, ground)
  const from = levels.guess()
  if (typeof start !== 'string') {
    from.shared.set(start.shared)
    from.own.set(start.own)
  }
  if (start === 'without pipe') from.shared[shapeLayout(model).pipeLevel] = NO_PIPE_DB
  const { here, equations, objective, converged } = climb(levels, from, trusting ? TRUSTING_STEPS : 0)
  levels.weighsExpected = true
  levels.assemble(here, equations)
  levels.weighsExpected = false
  equations.solve(0)
  const leaksOverFloorDb = levels.leaksOverFloorDb(here)
  return {
    ...here,
    logEvidence: -objective - 0.5 * equations.logDeterminant + levels.logPriorNorm(),
    residualDb: levels.residualDb(),
    converged,
    noise: () => levels.noise(here, equations),
    leaksOverFloorDb,
    overFloorDb: leaksOverFloorDb[0] ?? new Float64Array(0),
  }
}

/** From where a fit stands to the nearest summit of its posterior; `trusted` steps doubt no clip. Overwrites `start`. */
function climb(levels: LevelModel, start: Parameters, trusted: number) {
  const settings = start.own.length / OWN
  let here = start
  let there: Parameters = { shared: new Float64Array(here.shared.length), own: new Float64Array(here.own.length) }
  let equations = new NormalEquations(levels.size, settings)
  let spare = new NormalEquations(levels.size, settings)
  let isTrusting = trusted > 0
  levels.doubtsClips = !isTrusting
  let objective = levels.assemble(here, equations)
  let damping = 0
  let converged = false
  for (let step = 1; step <= MOST_STEPS && !converged && damping < MOST_DAMPING; step++) {
    let tried = Number.POSITIVE_INFINITY
    if (equations.solve(damping)) {
      add(here.shared, equations.step, there.shared)
      add(here.own, equations.ownStep, there.own)
      keepInRange(there.shared)
      tried = levels.assemble(there, spare)
    }
    if (tried <= objective) {
      converged = objective - tried < (isTrusting ? SETTLED.trusting : SETTLED.doubting)
      objective = tried
      damping = damping < 1e-3 ? 0 : damping / 4
      ;[here, there] = [there, here]
      ;[equations, spare] = [spare, equations]
    } else {
      damping = Math.max(damping * 6, 0.01)
    }
    if (isTrusting && (converged || step >= trusted || damping >= MOST_DAMPING)) {
      isTrusting = false
      converged = false
      levels.doubtsClips = true
      objective = levels.assemble(here, equations)
      damping = 0
    }
  }
  return { here, equations, objective, converged }
}

function add(a: Float64Array, b: Float64Array, out: Float64Array): void {
  for (let i = 0; i < a.length; i++) out[i] = a[i]! + b[i]!
}
