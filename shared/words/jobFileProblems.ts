import type { Wording } from './wording'

/** What is wrong with a job file, where the rest of the job still opens. */
export const JOB_FILE_PROBLEMS = {
  bag_broken_off: {
    text: 'The file breaks off before its end.',
    mend: 'What is whole in it was opened; ask for the file again.',
  },
  /** `why` comes from the reader. */
  bag_file_damaged: { text: '{file} is damaged or was changed: {why}.' },
  bag_file_missing: { text: '{file} is missing.', mend: 'Ask for the file again.' },
  bag_file_extra: {
    text: '{file} stands in no manifest, so nobody vouches for it; it was left out.',
  },
  bag_file_refused: { text: '{file} was left out: {why}.' },
  bag_more: { text: 'There are {count} more such files.' },
  bag_odd_row: {
    text: '{file} holds {count} rows that cannot be read, the first of them row {row}.',
    mend: 'Ask for the file again.',
  },
  bag_fetch: { text: 'Parts of it were to be fetched from elsewhere; nothing is fetched.' },
  bag_oxum: { text: 'It holds another number of files or bytes than it says.' },
  bag_clip_lost: {
    text: 'The sound of {file} did not come with it.',
    mend: 'Its row stays; ask for the file again.',
  },
  bag_clips_lost: {
    text: 'The sound of {file} and of {count} more did not come with it.',
    mend: 'Their rows stay; ask for the file again.',
  },
  bag_file_stray: { text: '{file} belongs to nothing in the job; it was left out.' },
  bag_photo_odd: { text: '{file} is no photo; it was left out.' },
} as const satisfies Record<string, Wording>
