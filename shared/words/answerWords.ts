import type { Wording } from './wording'

/** What the answer says, and the headings of its parts. */
export const ANSWER_WORDS = {
  answer_located: { text: 'Located: {along_m} along the line, {tape}.' },
  answer_unsure: { text: 'Unsure: the best candidate is {along_m} along the line, {tape}.' },
  answer_unsure_nowhere: { text: 'Unsure: no place can be named yet.' },
  answer_no_leak_heard: { text: 'No leak heard.' },
  answer_window: {
    text: 'If there is one, it lies between {from_m} and {to_m} with {window_probability} probability.',
  },
  answer_window_located: { text: 'It lies between {from_m} and {to_m} with {window_probability} probability.' },
  answer_second_source: { text: 'Another source: {along_m} along the line, {tape}; probability {probability}.' },
  answer_clips_used: { text: '{used} of {clips} clips used.' },
  heading_why: { text: 'Why' },
  heading_points: { text: 'Points, the likeliest first' },
  heading_next: { text: 'Next' },
  heading_set_aside: { text: 'Clips set aside' },
  heading_noted: { text: 'Noted' },
  answer_not_confirmed: {
    text: 'Nobody has confirmed this yet: look at the spectrum and listen to the best point and one beside it first.',
  },
  inspect_clip: { text: '{file}: {duration_s}, {rate_hz}, channels: {channels}.' },
  inspect_more_columns: { text: 'There are more numbers than fit here: add --csv or --json, or name one clip only.' },
  caution_marks: {
    text: 'Call for utility marks before you dig. They do not cover private lines (lighting, gas, irrigation): expose those by hand. Your local code comes first.',
  },
} as const satisfies Record<string, Wording>
