import type { Problem, Severity } from '../base/problem'

/**
 * Every problem that reading and judging a clip can name, the severities it can have and the values it carries.
 *
 * Values are numbers in the unit at the end of their names, never rounded. The sentences stand in
 * shared/words/clipProblems.ts under the same keys.
 */
export const AUDIO_PROBLEMS = {
  /** The file ends before its header says; `weak` when a tenth or more is missing. */
  truncated: { severities: ['note', 'weak'], values: ['found_s', 'expected_s'] },
  /** The recorder never filled in the length; the rest of the file was read. */
  header_not_patched: { severities: ['note'], values: [] },
  /** A size in the header contradicts the file; what is there was read. */
  header_lies: { severities: ['note'], values: ['chunk'] },
  /** Samples of a float file that are no numbers; read as 0. */
  not_finite: { severities: ['weak'], values: ['count'] },
  /** `spoilt` below 1 s, `weak` below 3 s. */
  too_short: { severities: ['weak', 'spoilt'], values: ['duration_s'] },
  /** `spoilt`: nothing but digital silence or the last step of the converter; `weak`: for part of the time. */
  silent: { severities: ['weak', 'spoilt'], values: ['share_percent'] },
  /** So low that the converter's steps are heard. */
  faint: { severities: ['weak'], values: ['level_dbfs'] },
  /** Flat tops: `note` for a moment, `weak` for more, `spoilt` when a tenth of the samples are flat. */
  clipped: { severities: ['note', 'weak', 'spoilt'], values: ['share_percent'] },
  /** The mean lies off zero. */
  dc_offset: { severities: ['note'], values: ['offset_percent'] },
  /** A comb of steady tones at 50 or 60 Hz and its multiples. */
  mains_hum: { severities: ['note'], values: ['hz'] },
  /** Thumps of the microphone or its cable: `note` for a few, `weak` for more, `spoilt` for most of the clip. */
  knocked: { severities: ['note', 'weak', 'spoilt'], values: ['count', 'share_percent'] },
  /** Rumble that swells and dies dominates. */
  windy: { severities: ['weak'], values: ['share_percent', 'swell_db'] },
  /** Somebody speaks: `note` for a little, `weak` for more. */
  voice: { severities: ['note', 'weak'], values: ['share_percent'] },
  /** The noise floor ducks after loud moments and creeps back. */
  gain_riding: { severities: ['weak'], values: ['dip_db', 'count'] },
  /** Nothing above a sharp edge: `weak` when the edge cuts into the bands that place the leak. */
  band_limited: { severities: ['note', 'weak'], values: ['hz'] },
  /** Decoded by somebody else from something that may have been a lossy codec; told by whoever decoded it, who knows. */
  lossy: { severities: ['weak'], values: [] },
} as const satisfies Record<string, { readonly severities: readonly Severity[]; readonly values: readonly string[] }>

export type AudioProblemKey = keyof typeof AUDIO_PROBLEMS

/** A problem of the table, with a severity and values that the table allows it. */
export function audioProblem<K extends AudioProblemKey>(
  key: K,
  severity: (typeof AUDIO_PROBLEMS)[K]['severities'][number],
  values: Readonly<Record<(typeof AUDIO_PROBLEMS)[K]['values'][number], number | string>>,
): Problem {
  return { key, severity, values }
}
