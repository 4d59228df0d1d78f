import type { Wording } from './wording'

/** What to do next: listen, dig, or try what may let a leak be heard. */
export const NEXT_WORDS = {
  next_listen: {
    text: 'Listen next {tape} ({along_m} along): expect the window to shrink from {window_m} to about {expected_window_m}.',
  },
  next_listen_anyway: { text: 'Listen next {tape} ({along_m} along).' },
  next_listen_then: { text: 'Then {tape} ({along_m} along).' },
  next_listen_again: {
    text: 'Listen once more {tape} ({along_m} along), set down anew: expect the window to shrink from {window_m} to about {expected_window_m}.',
  },
  next_listen_set_aside: {
    text: 'Record again {tape} ({along_m} along), where no clip could be used: expect the window to shrink from {window_m} to about {expected_window_m}.',
  },
  next_listen_across: {
    text: 'The route is not sure. Listen next at three places across the line, {tape} ({along_m} along): {offset_m} to the left, over it, and {offset_m} to the right.',
  },
  next_listen_all_three: {
    text: 'With all three, expect the window to shrink from {window_m} to about {expected_window_m}. The loudest of them says where the pipe runs.',
  },
  next_dig: {
    text: 'Dig first from {from_m} to {to_m} along. That piece holds the leak with {probability} probability.',
  },
  next_dig_ends: { text: 'It begins {from} and ends {to}.' },
  next_dig_then: { text: 'Then from {from_m} to {to_m} along: {probability} probability.' },
  next_dig_cost: { text: 'Opening it costs {cost}, in the unit you typed costs in.' },
  next_dig_order: {
    text: 'Dug in the order of probability over cost, finding it is expected to cost {expected_cost}; with the likeliest piece first, {likeliest_first_cost}, in the unit you typed costs in.',
  },
  next_try_air_passes: {
    text: 'Check that air passes: nothing is heard even at point {point}, {distance_m} from the air inlet.',
  },
  next_try_air_reaches: {
    text: 'Check that air passes at all: look for bubbles in the basin, and listen at the air inlet.',
  },
  next_try_longer: {
    text: 'Record longer: the clips are {duration_s} long, and an air leak may be silent for as long as that between gurgles. Try 10 seconds or more.',
  },
  next_try_closer: {
    text: 'Set the points closer: they are {spacing_m} apart over a pipe {depth_m} deep. Every {closer_m} would miss less.',
  },
  next_try_air_off: {
    text: 'Record each point once more with the air off, without lifting the microphone: that tells the noise floor there.',
  },
  next_try_quieter: {
    text: 'Come back at a quieter hour: {clips} of {of_clips} clips hold wind, voices, knocks or hum.',
  },
  next_try_other_end: {
    text: 'Let the air in at the other end: at {inlet_m} along the inlet hisses, and covers what is near it.',
  },
  next_try_either_end: { text: 'Let the air in at the other end of the line, and listen again.' },
  next_try_more_air: {
    text: 'Let in a little more air, slowly, and never above the pressure of the water test.',
  },
} as const satisfies Record<string, Wording>
