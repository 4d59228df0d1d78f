import type { Wording } from './wording'

/** Clips of a recorder, told to the points of a line. */
export const JOIN_WORDS = {
  heading_join: { text: 'Which point each clip is of' },
  heading_recorder_clips: { text: 'Clips of a recorder' },
  join_how: {
    text: 'Many clips at once can join this line. Then say which point each is of: by the numbers in their names, by their order, or one by one.',
  },
  join_intro: { text: '{clips} clips of {name}. Look through the list, then let them join.' },
  join_left_out: { text: 'Left out, as they are no recordings: {files}.' },
  label_join_way: { text: 'They are told to points' },
  label_join_name: { text: 'By the numbers in their names' },
  label_join_on: { text: 'In order, one at each point' },
  label_join_on_off: { text: 'In order, air on, then off' },
  label_join_off_on: { text: 'In order, air off, then on' },
  label_first_point: { text: 'The first clip is of point' },
  label_join_sweep: { text: 'They join' },
  label_own_sweep: { text: 'A sweep of their own' },
  label_join_point: { text: 'Point of {name}' },
  label_point_short: { text: 'Point {point}' },
  label_no_point: { text: 'No point yet' },
  label_join_air: { text: 'Air of {name}' },
  label_join_take: { text: 'Take of {name}' },
  join_take_hint: {
    text: 'Clips of one point with the same take were made without lifting the microphone; set down anew, it is the next take.',
  },
  join_doubled: {
    text: '{name} is of the same point, air and take as another clip.',
    mend: 'Give it another take or another point.',
  },
  join_loose: { text: 'Of no point yet: {files}.', mend: 'They stay on this list when the others have joined.' },
  do_join_clips: { text: 'Let clips join' },
  do_join: { text: 'Let {clips} clips join' },
  do_leave_clips: { text: 'Leave the others' },
  join_done: { text: '{clips} clips have joined sweep {sweep}.' },
} as const satisfies Record<string, Wording>
