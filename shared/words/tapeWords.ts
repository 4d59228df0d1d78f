import type { Wording } from './wording'

/** Where a place lies, by tape. They continue a sentence, so they begin small and have no full stop. */
export const TAPE_WORDS = {
  tape_at_point: { text: 'at point {point}' },
  tape_past_point: { text: '{distance_m} past point {point} toward point {toward}' },
  tape_before_point: { text: '{distance_m} before point {point} toward point {toward}' },
  tape_past_toward_corner: { text: '{distance_m} past point {point} toward the corner before point {toward}' },
  tape_before_toward_corner: { text: '{distance_m} before point {point} toward the corner after point {toward}' },
  tape_round_corner: {
    text: '{distance_m} along the pipe from point {point}, round the corner toward point {toward}',
  },
  tape_past_last: { text: '{distance_m} past point {point}, the last one' },
  tape_before_first: { text: '{distance_m} before point {point}, the first one' },
  tape_from_start: { text: "{distance_m} from the line's start" },
} as const satisfies Record<string, Wording>
