import { depthAt } from '../line/depthAt'
import type { LocateAnswer, Reason } from './answer'
import type { Facts } from './facts'
import type { Place } from './readingForecast'
import { type WindowForecast, windowForecast } from './windowForecast'

/** So many heard points, those nearest to the likeliest place, are tried for a repeat. Chosen. */
const MOST_REPEATS = 4
/** Advice beyond this many places helps nobody. */
const MOST_ADVICE = 3
/** More places than this are not tried, along a wide window. Chosen. */
const MOST_TRIED = 20
/** Advice that is expected to leave more than this share of the window is not worth the walk. Chosen. */
const WORTH_SHARE = 0.9
/** And none that is expected to take less than this off it: nobody digs narrower, m. Chosen. */
const WORTH_M = 0.04
/** Listening at a point once more has to leave this much less than the best new place. Chosen. */
const REPEAT_SHARE = 0.9
/** Nearer to a point than this share of a spacing is no new place. Chosen. */
const NEW_PLACE_SPACINGS = 0.2
/** The route is unsure where it may be this share of the depth beside what was told. Chosen. */
const UNSURE_ROUTE_DEPTHS = 0.5

type Advice = LocateAnswer['listenNext'][number]

/**
 * Where more settings-down would shrink the window most, by expectation over what they may read (`windowForecast`).
 *
 * Where the route is unsure: three places across the line over the likeliest place, to be listened to together; their
 * width is that after all three. Where the source may lie past an end: places beyond it. Else the best places on the
 * line, half a spacing or more apart. A point is named again only if its clips were all set aside or a second reading
 * there is clearly better than any new place.
 *
 * @param why What decided the verdict.
 * @returns Best first; only places that promise at least a tenth and a few centimetres off the window, but beyond an end always.
 */
export function listenNext(facts: Facts, why: readonly Reason[]): LocateAnswer['listenNext'] {
  const { candidate, line } = facts
  const widthNow = candidate.windowM[1] - candidate.windowM[0]
  const routeSdM = line.routeSdM ?? 0
  const isUnsure = routeSdM > UNSURE_ROUTE_DEPTHS * depthAt(line, candidate.alongM).depthM
  const pastEnd = why.find(({ key }) => key === 'reason_past_start' || key === 'reason_past_end')
  if (isUnsure && !pastEnd && !wasListenedAcross(facts)) return across(facts, windowForecast(facts, routeSdM))
  const forecast = windowForecast(facts, 0)
  if (pastEnd) return spread(beyond(facts, pastEnd.key === 'reason_past_end', forecast), facts.spacingM / 2)
  const mostM = Math.min(WORTH_SHARE * widthNow, widthNow - WORTH_M)
  const worth = ({ expectedWindowM }: Advice) => expectedWindowM < mostM
  const fresh = rated(newPlaces(facts), forecast)
  const least = Math.min(widthNow, ...fresh.map(({ expectedWindowM }) => expectedWindowM))
  const again = rated(heardPlaces(facts), forecast).filter((each) => each.expectedWindowM < REPEAT_SHARE * least)
  return spread([...fresh, ...again].filter(worth), facts.spacingM / 2)
}

function rated(places: readonly Place[], forecast: WindowForecast): Advice[] {
  return places.map((place) => ({ ...place, expectedWindowM: forecast([place]) }))
}

/** The best, and others that are far enough from all better ones. */
function spread(advice: readonly Advice[], apartM: number): Advice[] {
  const kept: Advice[] = []
  for (const each of [...advice].sort((a, b) => a.expectedWindowM - b.expectedWindowM || a.alongM - b.alongM)) {
    if (kept.length < MOST_ADVICE && kept.every(({ alongM }) => Math.abs(alongM - each.alongM) >= apartM - 1e-9)) {
      kept.push(each)
    }
  }
  return kept
}

/** The heard points nearest to the likeliest place. */
function heardPlaces({ points, candidate }: Facts): Place[] {
  const heard = points.filter(({ evidence }) => evidence.clipsUsed > 0).map(({ alongM }) => alongM)
  return [...new Set(heard)]
    .sort((a, b) => Math.abs(a - candidate.alongM) - Math.abs(b - candidate.alongM))
    .slice(0, MOST_REPEATS)
    .map((alongM) => ({ alongM, offsetM: 0 }))
}

/** Round places from a spacing before the window to one past it that are no points yet, and points without a usable clip. */
function newPlaces(facts: Facts): Place[] {
  const { candidate, spacingM, points } = facts
  const [low, high] = candidate.windowM
  const silent = points.filter(({ alongM, evidence }) => evidence.clipsUsed === 0 && isNear(facts, alongM))
  const round = roundPlaces(low - spacingM, high + spacingM, spacingM / 4).filter((alongM) => isNew(facts, alongM))
  return [...new Set([...silent.map(({ alongM }) => alongM), ...round])].map((alongM) => ({ alongM, offsetM: 0 }))
}

/** Round places within two spacings beyond an end of the line. */
function beyond(facts: Facts, isEnd: boolean, forecast: WindowForecast): Advice[] {
  const { range, spacingM } = facts
  const [low, high] = isEnd ? [range[1], range[1] + 2 * spacingM] : [range[0] - 2 * spacingM, range[0]]
  const outside = (alongM: number) => (isEnd ? alongM > range[1] + 1e-9 : alongM < range[0] - 1e-9)
  const places = roundPlaces(low, high, spacingM / 4).filter((alongM) => outside(alongM) && isNew(facts, alongM))
  return rated(
    places.map((alongM) => ({ alongM, offsetM: 0 })),
    forecast,
  )
}

/** Left of the line, over it and right of it, at the likeliest place or a point close by; the width after all three. */
function across(facts: Facts, forecast: WindowForecast): Advice[] {
  const { candidate, line, points, spacingM } = facts
  const { depthM } = depthAt(line, candidate.alongM)
  const near = points.find(({ alongM }) => Math.abs(alongM - candidate.alongM) < NEW_PLACE_SPACINGS * spacingM)
  const alongM = near?.alongM ?? Math.round(candidate.alongM * 10) / 10
  const asideM = Math.max(0.1, Math.round(Math.max(depthM, line.routeSdM ?? 0) * 10) / 10)
  const places = [asideM, 0, -asideM].map((offsetM) => ({ alongM, offsetM }))
  const expectedWindowM = forecast(places)
  return places.map((place) => ({ ...place, expectedWindowM }))
}

/** Whether somebody already listened on both sides of the line near the likeliest place. */
function wasListenedAcross({ model, candidate, line, spacingM }: Facts): boolean {
  const leastM = UNSURE_ROUTE_DEPTHS * depthAt(line, candidate.alongM).depthM
  const near = model.settings.filter(({ alongM, on }) => on !== null && Math.abs(alongM - candidate.alongM) <= spacingM)
  return near.some(({ offsetM }) => offsetM >= leastM) && near.some(({ offsetM }) => offsetM <= -leastM)
}

function isNear({ candidate, spacingM }: Facts, alongM: number): boolean {
  return alongM >= candidate.windowM[0] - spacingM && alongM <= candidate.windowM[1] + spacingM
}

function isNew({ points, spacingM }: Facts, alongM: number): boolean {
  return points.every((point) => Math.abs(point.alongM - alongM) >= NEW_PLACE_SPACINGS * spacingM)
}

/** Places on the tenths of a metre, about a step apart and not too many. */
function roundPlaces(low: number, high: number, step: number): number[] {
  const tenths = Math.max(1, Math.round(10 * Math.max(step, (high - low) / MOST_TRIED)))
  const first = Math.ceil((10 * low) / tenths - 1e-9)
  const last = Math.floor((10 * high) / tenths + 1e-9)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => ((first + i) * tenths) / 10)
}
