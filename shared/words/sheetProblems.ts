import type { Wording } from './wording'

/** What is odd in a sheet, or in the names that stand for one. */
export const SHEET_PROBLEMS = {
  sheet_contact_unknown: {
    text: 'Row {row} has the contact "{value}", which is not known here and counts as other.',
    mend: 'Known are {known}.',
  },
  sheet_phone_unknown: {
    text: 'Row {row} says "{value}" of the phone, which is not known here and was left out.',
    mend: 'Known are {known}.',
  },
  sheet_point_in_two_places: {
    text: 'Point {point} is told at {along_m} and at {other_along_m}.',
    mend: 'If it is one point, give it one distance.',
  },
  sheet_file_twice: {
    text: 'The clip {file} is named in two rows.',
    mend: 'If that was a slip, correct the file column.',
  },
  sheet_column_left_out: { text: 'The column "{name}" was left out, because no program should have it.' },
  name_not_numbered: {
    text: '{file} was left out: its name does not say which point it is from.',
    mend: 'Name clips like 6.wav, 6-on.wav, 6-off.wav or 6-on-take2.wav, or write a sweep.csv.',
  },
  layout_not_used: {
    text: 'The folder has a sweep.csv, which says where the points are; spacing and start were not used.',
  },
} as const satisfies Record<string, Wording>
