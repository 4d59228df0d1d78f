import type { Line, SketchPlace } from '../../../shared/line/line'
import type { LocateAnswer, Source, Verdict } from '../../../shared/locate/answer'
import type { SketchPoint } from '../../../shared/sketch/sketchPoint'

/** A line with nothing told but its length or its corners. */
export function bareLine(told: Partial<Line> = {}): Line {
  return {
    lengthM: 10,
    depthM: null,
    airInletM: null,
    vertices: null,
    routeSdM: null,
    stretches: [],
    fittings: [],
    noises: [],
    pipe: null,
    unknown: {},
    ...told,
  }
}

/** Three legs of 4, 3 and 3 m with a left and a right corner. */
export const BENT: readonly SketchPlace[] = [
  { xM: 0, yM: 0 },
  { xM: 4, yM: 0 },
  { xM: 4, yM: 3 },
  { xM: 7, yM: 3 },
]

export function pointsAt(alongsM: readonly number[]): SketchPoint[] {
  return alongsM.map((alongM, i) => ({ point: i + 1, alongM, offsetM: 0, isHeard: true }))
}

export function sourceAt(alongM: number, windowM: readonly [number, number], tape: Source['tape']): Source {
  return { alongM, windowM, windowProbability: 0.8, probability: 0.9, place: { xM: 0, yM: 0 }, tape }
}

/** Its first point is ranked first; its density a triangle from 2 to 4 with its top at 3. */
export function answerOf(points: readonly SketchPoint[], verdict: Verdict, sources: readonly Source[]): LocateAnswer {
  const alongM = Array.from({ length: 101 }, (_, i) => i / 10)
  return {
    verdict,
    reasons: [],
    sources,
    points: points.map(({ point, alongM: at }, i) => ({
      point,
      alongM: at,
      rank: i + 1,
      nearestProbability: 1 / points.length,
      evidence: {
        levelDbFs: null,
        overFloorDb: null,
        bestBandHz: null,
        ringRatePerS: null,
        medianPitchHz: null,
        bubbling: null,
        clipsUsed: 1,
      },
      problems: [],
    })),
    clips: [],
    density: { alongM, perM: alongM.map((at) => Math.max(0, 1 - Math.abs(at - 3))) },
    listenNext: [],
    digFirst: [],
  }
}
