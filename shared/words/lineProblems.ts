import type { Wording } from './wording'

/** What is odd in what was told of the line. */
export const LINE_PROBLEMS = {
  line_path_stretched: {
    text: 'The drawn path is {path_m} long and the told length {length_m}. The told length counts; the path was stretched to it.',
    mend: 'Measure the line again, or leave its length out.',
  },
  line_value_unknown: {
    text: '{place} is "{value}", which is not known here and counts as other.',
    mend: 'Known are {known}.',
  },
  line_key_like: {
    text: 'The line has a key "{name}", which is kept and not used.',
    mend: 'If "{meant}" was meant, write that.',
  },
  line_key_left_out: { text: 'The key "{name}" was left out, because no program should have it.' },
  line_stretches_overlap: {
    text: 'Two stretches both hold {from_m} to {to_m}. The one told later counts there.',
    mend: 'Let one end where the next begins.',
  },
  line_beyond_end: {
    text: '{place} is {at_m}, past the end of the line at {length_m}.',
    mend: 'Check it, or the length.',
  },
} as const satisfies Record<string, Wording>
