import type { Wording } from './wording'

/** Why a clip could not even be opened. */
export const FILE_PROBLEMS = {
  missing_file: {
    text: 'The clip is not there.',
    mend: 'Copy it into the folder, or correct its name.',
  },
  missing_file_like: {
    text: 'The clip is not there; {near} is.',
    mend: 'If that is the clip, write its name so.',
  },
  /** `why` comes from the reader, with its own mend. */
  unreadable: { text: 'The clip cannot be read: {why}.' },
  file_not_regular: {
    text: 'This is no file with sound in it but a folder or a device.',
    mend: 'Name a WAV file instead.',
  },
  file_outside: {
    text: 'The clip is a link to a file outside the folder, which is not followed.',
    mend: 'Copy the clip itself into the folder.',
  },
  file_too_large: {
    text: 'The clip is {size_mb} MB; at most {most_mb} MB are read.',
    mend: 'Cut it down to the seconds you listened.',
  },
} as const satisfies Record<string, Wording>
