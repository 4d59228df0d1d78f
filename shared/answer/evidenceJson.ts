import type { Problem } from '../base/problem'
import type { ClipEvidence } from '../evidence/evidence'
import { type ProblemJson, problemJson } from './answerJson'

/** One clip's evidence as it stands in a file: `yardhark inspect --json` writes a list of these. */
export interface EvidenceJson {
  readonly file: string
  /** This and all below are `null`, and the bands none, when the clip could not be read. */
  readonly duration_s: number | null
  readonly sample_rate_hz: number | null
  readonly channels: number | null
  readonly bands: readonly {
    readonly mid_hz: number
    readonly level_dbfs: number | null
    readonly quiet_dbfs: number | null
    readonly busy_dbfs: number | null
  }[]
  readonly rings: {
    readonly rate_per_s: number
    readonly median_pitch_hz: number | null
    readonly tonality: number | null
    readonly pitch_spread_octaves: number | null
    readonly median_decay_s: number | null
    readonly median_strength_db: number | null
    readonly median_radius_m: number | null
    readonly assumed_pressure_pa: number
    readonly burst_rate_per_s: number
    readonly ring_share: number | null
    readonly regularity: number | null
    readonly slug_rate_hz: number | null
  } | null
  readonly bubbling: number | null
  readonly problems: readonly ProblemJson[]
}

/**
 * The evidence of a clip in the form of its file.
 *
 * @param evidence `null` when the clip could not be read.
 * @param problems Beyond the evidence's own: why it could not be read.
 */
export function evidenceJson(file: string, evidence: ClipEvidence | null, problems: readonly Problem[]): EvidenceJson {
  const all = [...problems, ...(evidence?.problems ?? [])].map(problemJson)
  const none = { file, duration_s: null, sample_rate_hz: null, channels: null, bands: [], rings: null, bubbling: null }
  if (evidence === null) return { ...none, problems: all }
  return {
    file,
    duration_s: evidence.durationS,
    sample_rate_hz: evidence.sampleRateHz,
    channels: evidence.channels,
    bands: evidence.bands.map((band) => ({
      mid_hz: band.midHz,
      level_dbfs: band.levelDbFs,
      quiet_dbfs: band.quietDbFs,
      busy_dbfs: band.busyDbFs,
    })),
    rings: ringsJson(evidence),
    bubbling: evidence.bubbling,
    problems: all,
  }
}

function ringsJson({ rings }: ClipEvidence): EvidenceJson['rings'] {
  return {
    rate_per_s: rings.ratePerS,
    median_pitch_hz: rings.medianPitchHz,
    tonality: rings.tonality,
    pitch_spread_octaves: rings.pitchSpreadOctaves,
    median_decay_s: rings.medianDecayS,
    median_strength_db: rings.medianStrengthDb,
    median_radius_m: rings.medianRadiusM,
    assumed_pressure_pa: rings.assumedPressurePa,
    burst_rate_per_s: rings.burstRatePerS,
    ring_share: rings.ringShare,
    regularity: rings.regularity,
    slug_rate_hz: rings.slugRateHz,
  }
}
