import type { Problem, Severity } from '../base/problem'
import type { LocateAnswer, PointEvidence, Reason, Verdict } from '../locate/answer'
import { wordsOf } from '../words/sentence'

/** The answer as it stands in a file: `yardhark locate --json` writes exactly this. Metres, seconds, hertz, decibels. */
export interface AnswerJson {
  readonly verdict: Verdict
  /** True only after a person looked and listened and said yes; no program sets it. */
  readonly confirmed: boolean
  readonly reasons: readonly ReasonJson[]
  readonly sources: readonly {
    readonly along_m: number
    readonly window_m: readonly [number, number]
    readonly window_probability: number
    readonly probability: number
    readonly xy_m: readonly [number, number]
    readonly tape: string
  }[]
  readonly points: readonly {
    readonly point: number
    readonly along_m: number
    readonly rank: number
    readonly nearest_probability: number
    readonly evidence: PointEvidenceJson
    readonly problems: readonly ProblemJson[]
  }[]
  readonly clips: readonly {
    readonly file: string
    readonly used: boolean
    readonly problems: readonly ProblemJson[]
  }[]
  readonly density: { readonly along_m: readonly number[]; readonly per_m: readonly number[] }
  readonly listen_next: readonly {
    readonly along_m: number
    readonly offset_m: number
    readonly expected_window_m: number
  }[]
  readonly dig_first: readonly {
    readonly from_m: number
    readonly to_m: number
    readonly probability: number
    readonly cost: number | null
  }[]
  readonly version: string
}

export interface ReasonJson {
  readonly key: string
  readonly values: Readonly<Record<string, number | string>>
  readonly text: string
}

export interface ProblemJson {
  readonly key: string
  readonly severity: Severity
  readonly values: Readonly<Record<string, number | string>>
  readonly text: string
  /** What to do about it; `null` where there is nothing to do. */
  readonly mend: string | null
}

export interface PointEvidenceJson {
  readonly level_dbfs: number | null
  readonly over_floor_db: number | null
  readonly best_band_hz: number | null
  readonly ring_rate_per_s: number | null
  readonly median_pitch_hz: number | null
  readonly bubbling: number | null
  readonly clips_used: number
}

/**
 * The answer in the form of its file, with every reason and problem in words.
 *
 * @param version Of the program that gave the answer.
 * @returns Full precision, never rounded for show; missing is `null`.
 */
export function answerJson(answer: LocateAnswer, version: string): AnswerJson {
  return {
    verdict: answer.verdict,
    confirmed: false,
    reasons: answer.reasons.map(reasonJson),
    sources: answer.sources.map((source) => ({
      along_m: source.alongM,
      window_m: source.windowM,
      window_probability: source.windowProbability,
      probability: source.probability,
      xy_m: [source.place.xM, source.place.yM],
      tape: wordsOf(source.tape).text,
    })),
    points: answer.points.map((point) => ({
      point: point.point,
      along_m: point.alongM,
      rank: point.rank,
      nearest_probability: point.nearestProbability,
      evidence: pointEvidenceJson(point.evidence),
      problems: point.problems.map(problemJson),
    })),
    clips: answer.clips.map(({ file, used, problems }) => ({ file, used, problems: problems.map(problemJson) })),
    density: { along_m: answer.density.alongM, per_m: answer.density.perM },
    listen_next: answer.listenNext.map((place) => ({
      along_m: place.alongM,
      offset_m: place.offsetM,
      expected_window_m: place.expectedWindowM,
    })),
    dig_first: answer.digFirst.map(({ fromM, toM, probability, cost }) => ({
      from_m: fromM,
      to_m: toM,
      probability,
      cost,
    })),
    version,
  }
}

/** A problem with its words. */
export function problemJson(problem: Problem): ProblemJson {
  const { key, severity, values } = problem
  return { key, severity, values, ...wordsOf(problem) }
}

function reasonJson(reason: Reason): ReasonJson {
  return { key: reason.key, values: reason.values, text: wordsOf(reason).text }
}

function pointEvidenceJson(evidence: PointEvidence): PointEvidenceJson {
  return {
    level_dbfs: evidence.levelDbFs,
    over_floor_db: evidence.overFloorDb,
    best_band_hz: evidence.bestBandHz,
    ring_rate_per_s: evidence.ringRatePerS,
    median_pitch_hz: evidence.medianPitchHz,
    bubbling: evidence.bubbling,
    clips_used: evidence.clipsUsed,
  }
}
