import type { Wording } from './wording'

/** A detector that is installed in the page. */
export const INSTALL_WORDS = {
  heading_detector: { text: 'Detector' },
  detector_why: {
    text: 'A detector has learnt from labelled clips what a leak sounds like. It is asked beside levels and rings, never instead of them, and the reasons of a place say what it weighed.',
  },
  detector_none: { text: 'None is installed: the place is worked out from levels and rings alone.' },
  detector_installed: { text: '{name} is installed and is asked about every clip with the air on.' },
  do_install_starting: { text: 'Install the starting detector' },
  do_install_file: { text: 'Install a detector from a file' },
  do_remove_detector: { text: 'Remove it' },
  detector_to_come: { text: 'The starting detector could not be fetched.', mend: 'Try again with a signal.' },
  detector_refused: { text: '{file} is no detector that can be used: {why}.' },
  detector_too_big: { text: '{file} is too big for a detector.', mend: 'Choose a file that yardhark train made.' },
  detector_not_kept: {
    text: 'The detector could not be kept: {why}. What was installed before is as it was.',
  },
  heading_card: { text: 'What it learnt from, and what it is worth' },
  label_card_clips: { text: 'Clips of leaks {leaks}, of none {others}, from {jobs} jobs' },
  label_card_area: {
    text: 'Leaks told from others on jobs it had not heard: ROC area {area}, with 95 % {low} to {high}',
  },
  label_card_trained: { text: 'Trained {when}' },
  label_card_devices: { text: 'Devices: {list}' },
  label_card_covers: { text: 'Covers: {list}' },
} as const satisfies Record<string, Wording>
