import type { Wording } from './wording'

/** Why the answer is what it is. */
export const REASON_WORDS = {
  reason_too_few_points: {
    text: 'Too few usable points for a place: {points}, and at least {needed} are needed. Record more, two on each side of the loudest.',
  },
  reason_no_source_needed: {
    text: 'Nothing rises over the noise floor the way a leak would: the chance that one was heard is {probability}.',
  },
  reason_loudest_is_little: {
    text: 'The most that any point stands over its noise floor is {over_floor_db}, at point {point}.',
  },
  reason_not_heard_is_not_tight: { text: 'Not heard is not tight: the pressure test decides.' },
  reason_weak_source: { text: 'It may be chance: the probability that a source was heard at all is {probability}.' },
  reason_wide_window: { text: 'The window is {width_m} wide. More than {widest_m} is too wide to dig by.' },
  reason_past_start: {
    text: 'The sound may come from before the start of the line ({share}). Record points beyond it.',
  },
  reason_past_end: { text: 'The sound may come from past the end of the line ({share}). Record points beyond it.' },
  reason_no_bubbling: {
    text: 'Something is louder there, but the bubbles do not bear it out. Record longer, and once with the air off.',
  },
  reason_not_plain: {
    text: 'No bubbles bear it out, and it stands only {over_floor_db} over the same place with the air off: too little to dig by. Record longer, and closer together.',
  },
  reason_falls_evenly: {
    text: 'Bands {low_band_hz} to {high_band_hz} fall off evenly on both sides of point {point}: {left_db} lower at point {left}, {right_db} lower at point {right}.',
  },
  reason_falls_both_sides: {
    text: 'Bands {low_band_hz} to {high_band_hz} fall off on both sides of point {point}, but not evenly: {left_db} lower at point {left}, {right_db} lower at point {right}.',
  },
  reason_falls_beyond_two: {
    text: 'Bands {low_band_hz} to {high_band_hz} are loudest at points {low} and {high}, and fall off beyond them, at points {before} and {after}.',
  },
  reason_stands_out: { text: 'At point {point} the sound stands {over_floor_db} over the noise floor near {band_hz}.' },
  reason_little_over_floor: {
    text: 'At the nearest point, {point}, the sound stands only {over_floor_db} over the noise floor near {band_hz}.',
  },
  reason_rings: {
    text: '{rate_per_s} bubbles a second ring at point {point}, {other_rate_per_s} at point {other}.',
  },
  reason_rings_both_sides: {
    text: '{rate_per_s} bubbles a second ring at point {point}, {other_rate_per_s} at point {other} and {third_rate_per_s} at point {third}.',
  },
  reason_clip_set_aside: {
    text: 'The clip {file} at point {point}, near the place, could not be used. The place stands on the others.',
  },
  reason_clips_set_aside: {
    text: '{clips} clips near the place could not be used, {file} among them. The place stands on the others.',
  },
  reason_coupled_louder: {
    text: 'At point {point} the microphone was set down so that everything reads {gain_db} louder than it fits; that was allowed for.',
  },
  reason_coupled_fainter: {
    text: 'At point {point} the microphone was set down so that everything reads {gain_db} fainter than it fits; that was allowed for.',
  },
  reason_near_inlet: { text: 'The air inlet, {inlet_m} along, is near and hisses too. Check by ear.' },
  reason_untold_inlet_start: {
    text: 'What hisses at the start of the line fits no leak, and is taken for the air inlet, which was not told. Tell where the air goes in.',
  },
  reason_untold_inlet_end: {
    text: 'What hisses at the end of the line fits no leak, and is taken for the air inlet, which was not told. Tell where the air goes in.',
  },
  reason_depth_assumed: { text: 'The depth was not told. {depth_m} is assumed, which widens the window.' },
  reason_second_source: {
    text: 'One source does not explain all points. A second lies {second_m} along; its probability is {probability}.',
  },
  reason_detector_for: {
    text: 'The detector speaks for it: what it heard in {clips} clips is {times} times as likely with a leak there. Its word counts {share}.',
  },
  reason_detector_against: {
    text: 'The detector speaks against it: what it heard in {clips} clips is {times} times as likely without a leak. Its word counts {share}.',
  },
  reason_detector_neither: {
    text: 'The detector speaks neither for nor against it after {clips} clips. Its word counts {share}.',
  },
  reason_detector_unheard: {
    text: 'Of {clips} clips, {new_devices} are of a device and {new_covers} on a cover that the detector never heard: there it weighs less.',
  },
  reason_sound_may_leave_beside: {
    text: 'This is where the sound leaves the ground. Bedding or a slab can shift that from the hole.',
  },
} as const satisfies Record<string, Wording>
