import type { Judged } from './judgeSweep'
import { type PlaceFigures, placeFigures, pooled, type Share } from './placeFigures'

/** A bound on the figures. `met` is `null` where there were too few sweeps to tell. */
export interface PlaceBound {
  readonly what: string
  readonly value: string
  readonly bound: string
  readonly met: boolean | null
}

/** Fewest sweeps without a leak, and of one family, for the bounds that ask for so many. */
const NO_LEAK_SWEEPS = 200
const FAMILY_SWEEPS = 100
/** Most places claimed in that many sweeps without a leak. */
const FALSE_PLACES = 6

/** What the locator is held to, worked out from all sweeps. */
export function placeBounds(judged: readonly Judged[]): PlaceBound[] {
  const all = placeFigures(judged)
  const inPool = pooled(judged)
  return [
    ...(inPool.length === 0 ? [] : pooledBounds(placeFigures(inPool))),
    worstAgainstLoudest(judged),
    lowestCoverage(judged),
    atLeast('plain sweeps located', all.plainLocated, 0.9),
    atMost('leaks of 6 dB and more called no leak heard', all.missed, 0.03),
    atMost('single leaks given a second source', all.second, 0.05),
    falsePlaces(all.falsePlaces),
    atLeast('both of two leaks found', all.bothFound, 0.8),
    atLeast('spoilt clips named and set aside', all.spoiltNamed, 1),
  ].filter((bound) => bound !== null)
}

function pooledBounds(figures: PlaceFigures): (PlaceBound | null)[] {
  const { error, loudest, lessLoudest, held, overBound, locatedWidth } = figures
  if (error === null || loudest === null || lessLoudest === null) return []
  const coverage = held.count / held.of
  const beaten = lessLoudest.mean < 0 && error.median < loudest.median && error.p90 < loudest.p90
  return [
    number("pooled: loudest point's 90th percentile", loudest.p90, '≥', 1),
    number('pooled: median error', error.median, '≤', 0.1),
    number('pooled: 90th percentile of error', error.p90, '≤', 0.35),
    overBound === null ? null : number("pooled: median error over the bound's", overBound, '≤', 1.3),
    {
      what: 'pooled: error less the loudest point, mean, median, 90th percentile',
      value: [lessLoudest.mean, error.median - loudest.median, error.p90 - loudest.p90].map(signed).join(', '),
      bound: 'all < 0',
      met: beaten,
    },
    {
      what: 'pooled: windows that hold the leak',
      value: percent(held),
      bound: '74 to 86 %',
      met: coverage >= 0.74 && coverage <= 0.86,
    },
    locatedWidth === null ? null : number('pooled: median width of located windows', locatedWidth, '≤', 0.6),
  ]
}

function number(what: string, value: number, sign: '≤' | '≥', bound: number): PlaceBound {
  return {
    what,
    value: value.toFixed(3),
    bound: `${sign} ${bound}`,
    met: sign === '≤' ? value <= bound : value >= bound,
  }
}

function atLeast(what: string, share: Share, least: number): PlaceBound | null {
  if (share.of === 0) return null
  return { what, value: percent(share), bound: `≥ ${100 * least} %`, met: share.count >= least * share.of }
}

function atMost(what: string, share: Share, most: number): PlaceBound | null {
  if (share.of === 0) return null
  return { what, value: percent(share), bound: `≤ ${100 * most} %`, met: share.count <= most * share.of }
}

/** Fewest sweeps of a family from which a standard error says something. Chosen. */
const COMPARED_SWEEPS = 10

/** In no family is the loudest point better beyond twice the standard error of the difference. */
function worstAgainstLoudest(judged: readonly Judged[]): PlaceBound | null {
  const families = byFamily(judged).flatMap(({ family, figures: { lessLoudest } }) =>
    lessLoudest === null || lessLoudest.of < COMPARED_SWEEPS
      ? []
      : [{ family, ...lessLoudest, beyond: lessLoudest.mean - 2 * lessLoudest.se }],
  )
  if (families.length === 0) return null
  const worst = families.reduce((a, b) => (b.beyond > a.beyond ? b : a))
  return {
    what: `worst family against the loudest point: ${worst.family}`,
    value: `${signed(worst.mean)} ± ${worst.se.toFixed(3)}`,
    bound: '≤ 2 standard errors',
    met: worst.beyond <= 0,
  }
}

function lowestCoverage(judged: readonly Judged[]): PlaceBound | null {
  const families = byFamily(judged).filter(({ figures }) => figures.held.of > 0)
  if (families.length === 0) return null
  const large = families.filter(({ figures }) => figures.held.of >= FAMILY_SWEEPS)
  const counted = large.length > 0 ? large : families
  const coverage = ({ figures: { held } }: FamilyFigures) => held.count / held.of
  const lowest = counted.reduce((a, b) => (coverage(b) < coverage(a) ? b : a))
  return {
    what: `fewest windows that hold the leak: ${lowest.family}`,
    value: percent(lowest.figures.held),
    bound: `≥ 65 % of ${FAMILY_SWEEPS}`,
    met: large.length === 0 ? null : coverage(lowest) >= 0.65,
  }
}

function falsePlaces(share: Share): PlaceBound | null {
  if (share.of === 0) return null
  const enough = share.of >= NO_LEAK_SWEEPS
  const most = Math.floor((FALSE_PLACES / NO_LEAK_SWEEPS) * share.of)
  return {
    what: 'places claimed without a leak',
    value: percent(share),
    bound: `≤ ${FALSE_PLACES} of ${NO_LEAK_SWEEPS}`,
    met: enough ? share.count <= most : share.count > FALSE_PLACES ? false : null,
  }
}

/** Figures of one family. */
export interface FamilyFigures {
  readonly family: string
  readonly figures: PlaceFigures
}

/** Figures family by family, in the order in which they first come. */
export function byFamily(judged: readonly Judged[]): FamilyFigures[] {
  const families = [...new Set(judged.map(({ family }) => family))]
  return families.map((family) => ({ family, figures: placeFigures(judged.filter((each) => each.family === family)) }))
}

/** A share as a percentage with its counts. */
export function percent({ count, of }: Share): string {
  return of === 0 ? '-' : `${((100 * count) / of).toFixed(0)} % (${count} of ${of})`
}

function signed(value: number): string {
  return `${value > 0 ? '+' : ''}${value.toFixed(3)}`
}
