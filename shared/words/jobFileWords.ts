import type { Wording } from './wording'

/** What the command line says of job files. */
export const JOB_FILE_WORDS = {
  file_holds: { text: '{name}: lines {lines}, points {points}, clips {clips}, opinions {opinions}.' },
  file_written: { text: '{file} was written, {size_mb} MB.' },
  file_some_points: { text: 'It was shared with the clips of some points only: {points}.' },
  file_without_customer: { text: 'It was shared without names, notes and photos.' },
  file_whole: { text: 'The file is whole: every digest fits.' },
  file_not_whole: { text: 'The file is not whole. The rest of the job can be opened.' },
  opinion_unchanged: { text: '{reviewer} gave an opinion; it is unchanged since device {device} signed it.' },
  opinion_changed: { text: '{reviewer} gave an opinion, and it is not what device {device} signed.' },
  opinion_unsigned: { text: '{reviewer} gave an opinion that nobody signed.' },
  merged_file: {
    text: '{file} joined: opinions {opinions}, clips {clips}, places where the copies differ {differences}.',
  },
  merged_nothing_new: { text: '{file} held nothing new.' },
} as const satisfies Record<string, Wording>
