import { lineJson } from '../line/lineJson'
import type { LocateAnswer, PointAnswer, Source } from '../locate/answer'
import type { KeptAnswer } from './keptAnswer'

/** A kept answer in the form of the job's file; `readKeptAnswer` gives the same again. */
export function keptAnswerJson({ timeS, version, answer, line, spectra, clips }: KeptAnswer): Record<string, unknown> {
  return {
    time_s: timeS,
    version,
    line: lineJson(line),
    ...answerFields(answer),
    spectra: spectra.map(({ point, midHz, onDbFs, offDbFs }) => ({
      point,
      mid_hz: midHz,
      on_dbfs: onDbFs,
      off_dbfs: offDbFs,
    })),
    digests: clips,
  }
}

function answerFields(answer: LocateAnswer): Record<string, unknown> {
  return {
    verdict: answer.verdict,
    reasons: answer.reasons,
    sources: answer.sources.map(sourceFields),
    points: answer.points.map(pointFields),
    clips: answer.clips,
    density: { along_m: answer.density.alongM, per_m: answer.density.perM },
    listen_next: answer.listenNext.map(({ alongM, offsetM, expectedWindowM }) => ({
      along_m: alongM,
      offset_m: offsetM,
      expected_window_m: expectedWindowM,
    })),
    dig_first: answer.digFirst.map(({ fromM, toM, probability, cost }) => ({
      from_m: fromM,
      to_m: toM,
      probability,
      cost,
    })),
  }
}

function sourceFields(source: Source): Record<string, unknown> {
  return {
    along_m: source.alongM,
    window_m: source.windowM,
    window_probability: source.windowProbability,
    probability: source.probability,
    xy_m: [source.place.xM, source.place.yM],
    tape: source.tape,
  }
}

function pointFields({ point, alongM, rank, nearestProbability, evidence, problems }: PointAnswer) {
  return {
    point,
    along_m: alongM,
    rank,
    nearest_probability: nearestProbability,
    level_dbfs: evidence.levelDbFs,
    over_floor_db: evidence.overFloorDb,
    best_band_hz: evidence.bestBandHz,
    ring_rate_per_s: evidence.ringRatePerS,
    median_pitch_hz: evidence.medianPitchHz,
    bubbling: evidence.bubbling,
    clips_used: evidence.clipsUsed,
    problems,
  }
}
