import type { Wording } from './wording'

/** A line as a sweep folder, to be taken elsewhere. */
export const EXPORT_WORDS = {
  do_export: { text: 'Save the sweep folder as a zip' },
  do_export_line: { text: 'Save {name} as a zip' },
  do_export_job: { text: 'Save the clips of {name}' },
  export_what: {
    text: 'A sweep folder holds sweep.csv, line.json and every clip as it was recorded. The command line and this page read it.',
  },
  do_export_whole: { text: 'Save the whole job as a job file' },
  export_packing_job: { text: 'Packing the job file.' },
  export_packing: { text: 'Packing the sweep folder.' },
  export_lost: {
    text: 'Clips that are no longer on this device: {lost}. The sheet names them; their sound is missing.',
  },
  export_not_wav: {
    text: 'Clips that are not WAV: {clips}. This page reads them; the command line sets them aside.',
  },
  export_failed: { text: 'The sweep folder could not be packed: {why}.', mend: 'Nothing here was changed. Try again.' },
} as const satisfies Record<string, Wording>
