import type { Problem } from '../base/problem'
import type { Line } from '../line/line'
import { linePath } from '../line/linePath'
import { lineRange } from '../line/lineRange'
import { placeAlong } from '../line/placeAlong'
import { tapeDistance } from '../line/tapeDistance'
import type { LocateAnswer, Reason, Sounding, Source } from './answer'
import { detectorPart } from './detectorPart'
import { detectorReason } from './detectorReason'
import { digFirst } from './digFirst'
import { digReason } from './digReason'
import { fitSweep, type SearchFrame } from './fitSweep'
import { listenNext } from './listenNext'
import { pointEvidence } from './pointEvidence'
import { rankPoints } from './rankPoints'
import { reasonsFor } from './reasons'
import { searchGrid, spacingM } from './searchGrid'
import { isUsable } from './settingsDown'
import { judge } from './verdict'
import { densityQuantile, shortestWindow } from './window'

/** Share of its own density that a source's window holds. */
export const WINDOW_PROBABILITY = 0.8
/** Spacing assumed for the search when all points lie in one place, m. Chosen. */
const LONE_SPACING_M = 1
/** Points a centimetre apart on a line of kilometres are searched as if they stood further apart. Chosen. */
const MOST_SPACINGS = 1000
/** Fewest places with a usable air-on clip from which a place is worked out. */
export const FEWEST_POINTS = 3
/** That there is a source to be heard, before any clip was: a line is listened to after it failed its test. Chosen. */
const PRIOR_OF_SOURCE = 0.9

export interface LocateInput {
  readonly line: Line
  readonly soundings: readonly Sounding[]
}

/**
 * From what the clips say to where to dig: README.md of this folder has the rules.
 *
 * The order of the soundings plays no part; nor does the gain of any setting-down beyond what rounding leaves.
 *
 * @param input Line as told and every clip of the sweep with its evidence, spoilt and missing ones too.
 */
export function locate(input: LocateInput): LocateAnswer {
  const { line, soundings } = input
  const points = pointEvidence(soundings)
  const heard = new Set(points.filter((point) => point.evidence.levelDbFs !== null).map((point) => point.alongM)).size
  const clips = soundings.map((sounding) => ({
    file: sounding.row.file,
    used: isUsable(sounding),
    problems: allProblems(sounding),
  }))
  const frame = searchFrame(input)
  if (frame === null || heard < FEWEST_POINTS) {
    return {
      verdict: 'unsure',
      reasons: [{ key: 'reason_too_few_points', values: { points: heard, needed: FEWEST_POINTS } }],
      sources: [],
      points: rankPoints(points, null),
      clips,
      density:
        frame === null ? { alongM: [], perM: [] } : { alongM: [...frame.grid], perM: [...frame.grid].map(() => 0) },
      listenNext: [],
      digFirst: [],
      detector: null,
    }
  }

  const fitted = fitSweep(line, soundings, frame)
  const { model, known, scan, two, logNone, ringSupport, detectorSupport } = fitted
  const logOdds = scan.logEvidence + Math.log(PRIOR_OF_SOURCE) - (logNone + Math.log(1 - PRIOR_OF_SOURCE))
  const probability = 1 / (1 + Math.exp(-logOdds))
  const sourceFrom = (perM: Float64Array, chance: number) =>
    candidateSource({ line, perM, grid: frame.grid, probability: chance, points })
  const candidate = sourceFrom(scan.perM, probability)
  const second = two && sourceFrom(two.secondPerM, probability * two.probability)
  const perM = two ? scan.perM.map((density, i) => density + two.probability * two.secondPerM[i]!) : scan.perM
  const facts = {
    line: fitted.line,
    untoldInletM: line.airInletM === null ? fitted.line.airInletM : null,
    model,
    scan,
    grid: frame.grid,
    range: frame.range,
    spacingM: frame.spacingM,
    candidate,
    points,
    soundings,
    known,
    ringSupport,
    detectorSupport,
  }
  const { verdict, why } = judge(facts)
  const detector = detectorPart(soundings, detectorSupport)
  const sources = verdict === 'no leak heard' ? [] : [candidate, ...(second ? [second] : [])]
  const expected = sources.length > 0 ? probability : 0
  const windows = sources.map((source) => source.windowM)
  const pieces = digFirst(line, windows, { alongM: frame.grid, perM })
  return {
    verdict,
    reasons: [
      ...why,
      ...reasonsFor(facts, verdict),
      ...secondReason(sources[1]),
      ...detectorReason(detector),
      ...(verdict === 'located' ? digReason(pieces) : []),
    ],
    sources,
    points: rankPoints(points, { alongM: frame.grid, perM }),
    clips,
    density: { alongM: [...frame.grid], perM: [...perM].map((density) => density * expected) },
    listenNext: verdict === 'no leak heard' ? [] : listenNext(facts, why),
    digFirst: pieces,
    detector,
  }
}

function allProblems(sounding: Sounding): Problem[] {
  return [...sounding.problems, ...(sounding.evidence?.problems ?? [])]
}

/** Where to search; `null` when there is neither a usable clip nor a told length. */
function searchFrame({ line, soundings }: LocateInput): SearchFrame | null {
  const usable = soundings.filter(isUsable).map((sounding) => sounding.row.alongM)
  const range = lineRange(line, usable)
  if (range === null) return null
  const spacing = Math.max(spacingM(usable) ?? LONE_SPACING_M, (range.toM - range.fromM) / MOST_SPACINGS)
  const ends = [range.fromM, range.toM] as const
  return { range: ends, spacingM: spacing, grid: searchGrid(ends, spacing) }
}

function secondReason(second: Source | undefined): Reason[] {
  if (!second) return []
  return [{ key: 'reason_second_source', values: { second_m: second.alongM, probability: second.probability } }]
}

function candidateSource({
  line,
  perM,
  grid,
  probability,
  points,
}: {
  readonly line: Line
  readonly perM: Float64Array
  readonly grid: Float64Array
  readonly probability: number
  readonly points: readonly { readonly point: number; readonly alongM: number }[]
}): Source {
  const alongM = densityQuantile(grid, perM, 0.5)
  const path = linePath(line)
  return {
    alongM,
    windowM: shortestWindow(grid, perM, WINDOW_PROBABILITY),
    windowProbability: WINDOW_PROBABILITY,
    probability,
    place: placeAlong(path, alongM),
    tape: tapeDistance(alongM, points, path.alongM.subarray(1, -1)),
  }
}
