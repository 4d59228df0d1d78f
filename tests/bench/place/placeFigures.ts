import { mean, median, normalQuantile, quantile, standardDeviation } from '../../../shared/base/statistics'
import type { Judged } from './judgeSweep'

/** Families with questions of their own, left out where sweeps are pooled. */
export const APART: readonly string[] = ['two leaks', 'no leak', 'sparse', 'shifted exit']

/** Sweeps of the families that are pooled. */
export function pooled(judged: readonly Judged[]): Judged[] {
  return judged.filter(({ family }) => !APART.includes(family))
}

/** Median and 90th percentile of a kind of error. */
export interface Spread {
  readonly median: number
  readonly p90: number
}

/** A count of how many. */
export interface Share {
  readonly count: number
  readonly of: number
}

/** Figures of a set of sweeps. Errors, widths and scores in spacings; `null`: nothing to count. */
export interface PlaceFigures {
  readonly sweeps: number
  readonly leakSweeps: number
  readonly located: Share
  readonly unsure: Share
  readonly none: Share
  readonly error: Spread | null
  readonly exitError: Spread | null
  readonly loudest: Spread | null
  readonly parabola: Spread | null
  readonly mostOverFloor: Spread | null
  /** What an estimate that meets the bound would show; its median is the median of 0.674 standard deviations. */
  readonly bound: Spread | null
  /** Median error over the bound's median, both on sweeps that have one. */
  readonly overBound: number | null
  /** Mean of error less the loudest point's, and its standard error; below 0: better. */
  readonly lessLoudest: { readonly mean: number; readonly se: number; readonly of: number } | null
  /** Windows that hold the leak, of all leak sweeps; an answer without window holds none. */
  readonly held: Share
  readonly withoutWindow: number
  readonly width: number | null
  readonly locatedWidth: number | null
  readonly score: number | null
  readonly crps: number | null
  readonly plainLocated: Share
  /** Leak sweeps of at least 6 dB that were called `no leak heard`. */
  readonly missed: Share
  /** Located with the leak more than a spacing away. */
  readonly farOff: Share
  readonly second: Share
  /** Sweeps without a leak that were located. */
  readonly falsePlaces: Share
  /** Sweeps of two leaks with a listed source within a spacing of each. */
  readonly bothFound: Share
  readonly spoiltNamed: Share
  readonly wronglyAside: number
  readonly drawS: number
  readonly locateS: number
}

/** Figures of at least one sweep. */
export function placeFigures(judged: readonly Judged[]): PlaceFigures {
  const leak = judged.filter(({ leaks }) => leaks > 0)
  const windows = leak.map(({ window }) => window).filter((window) => window !== null)
  const located = judged.filter(({ verdict }) => verdict === 'located')
  const verdict = (name: Judged['verdict']) => shareOf(judged, (each) => each.verdict === name)
  const bounded = leak.filter(({ bound }) => bound !== null)
  const bound = boundSpread(there(bounded.map(({ bound }) => bound)))
  const boundedError = spreadOf(bounded.map(({ error }) => error))
  return {
    sweeps: judged.length,
    leakSweeps: leak.length,
    located: verdict('located'),
    unsure: verdict('unsure'),
    none: verdict('no leak heard'),
    error: spreadOf(leak.map(({ error }) => error)),
    exitError: spreadOf(leak.map(({ exitError }) => exitError)),
    loudest: spreadOf(leak.map(({ loudestError }) => loudestError)),
    parabola: spreadOf(leak.map(({ parabolaError }) => parabolaError)),
    mostOverFloor: spreadOf(leak.map(({ overFloorError }) => overFloorError)),
    bound,
    overBound: bound && boundedError && boundedError.median / bound.median,
    lessLoudest: paired(leak),
    held: { count: windows.filter(({ holds }) => holds).length, of: leak.length },
    withoutWindow: leak.length - windows.length,
    width: medianOf(windows.map(({ width }) => width)),
    locatedWidth: medianOf(located.flatMap(({ window }) => window?.width ?? [])),
    score: meanOf(windows.map(({ score }) => score)),
    crps: meanOf(there(leak.map(({ crps }) => crps))),
    plainLocated: shareOf(
      judged.filter(({ isPlain }) => isPlain),
      isLocated,
    ),
    missed: shareOf(
      leak.filter(({ overFloorDb }) => overFloorDb! >= 6),
      (each) => each.verdict === 'no leak heard',
    ),
    farOff: shareOf(
      located.filter(({ leaks }) => leaks > 0),
      ({ error }) => error! > 1,
    ),
    second: shareOf(
      leak.filter(({ leaks }) => leaks === 1),
      ({ sources }) => sources > 1,
    ),
    falsePlaces: shareOf(
      judged.filter(({ leaks }) => leaks === 0),
      isLocated,
    ),
    bothFound: shareOf(
      judged.filter(({ leaks }) => leaks === 2),
      ({ found }) => found === 2,
    ),
    spoiltNamed: {
      count: judged.reduce((sum, { clips }) => sum + clips.named, 0),
      of: judged.reduce((sum, { clips }) => sum + clips.spoilt, 0),
    },
    wronglyAside: judged.reduce((sum, { clips }) => sum + clips.wronglyAside, 0),
    drawS: median(judged.map(({ drawS }) => drawS)),
    locateS: median(judged.map(({ locateS }) => locateS)),
  }
}

function isLocated({ verdict }: Judged): boolean {
  return verdict === 'located'
}

function shareOf(judged: readonly Judged[], test: (each: Judged) => boolean): Share {
  return { count: judged.filter(test).length, of: judged.length }
}

function there(values: readonly (number | null)[]): number[] {
  return values.filter((value) => value !== null)
}

function medianOf(values: readonly number[]): number | null {
  return values.length === 0 ? null : median(values)
}

function meanOf(values: readonly number[]): number | null {
  return values.length === 0 ? null : mean(values)
}

function spreadOf(values: readonly (number | null)[]): Spread | null {
  const known = there(values)
  return known.length === 0 ? null : { median: median(known), p90: quantile(known, 0.9) }
}

/** Probabilities at the middles of equal parts, by which a half normal is laid out. */
const PARTS = 400
const HALF_NORMAL = Array.from({ length: PARTS }, (_, i) => normalQuantile(0.5 + (i + 0.5) / PARTS / 2))

/** Errors of estimates that are normal with these standard deviations: the median as the median of 0.674 of them. */
export function boundSpread(deviations: readonly number[]): Spread | null {
  if (deviations.length === 0) return null
  const errors = deviations.flatMap((sd) => HALF_NORMAL.map((quantile) => sd * quantile))
  return { median: normalQuantile(0.75) * median(deviations), p90: quantile(errors, 0.9) }
}

function paired(leak: readonly Judged[]): PlaceFigures['lessLoudest'] {
  const less = leak.flatMap(({ error, loudestError }) =>
    error === null || loudestError === null ? [] : [error - loudestError],
  )
  if (less.length === 0) return null
  return { mean: mean(less), se: standardDeviation(less) / Math.sqrt(less.length), of: less.length }
}
