import type { Wording } from './wording'

/** What stands round every screen: names of screens, saving, tabs, commands. `label_` and `do_` are no sentences. */
export const PAGE_WORDS = {
  label_app: { text: 'Yardhark' },
  label_screens: { text: 'Screens' },
  label_jobs: { text: 'Jobs' },
  label_line: { text: 'Line' },
  label_place: { text: 'Place' },
  label_help: { text: 'Help' },
  label_skip: { text: 'Skip to the content' },
  label_saved: { text: 'Saved' },
  label_saving: { text: 'Saving' },
  label_read_only: { text: 'Only to look at' },
  label_which_line: { text: 'Line on show' },
  label_length: { text: '{m}' },
  label_none: { text: 'not told' },
  do_undo: { text: 'Undo' },
  do_redo: { text: 'Redo' },
  label_undo_what: { text: 'Undo: {what}' },
  label_redo_what: { text: 'Redo: {what}' },
  do_cancel: { text: 'Cancel' },
  do_dismiss: { text: 'Dismiss' },
  do_go_on: { text: 'Go on' },
  do_try_again: { text: 'Try again' },
  do_work_here: { text: 'Work here instead' },
  do_reload: { text: 'Load the page again' },
  page_read_only: {
    text: 'The jobs are open in another tab, where they can be changed. Here they can be looked at.',
  },
  page_handing_over: { text: 'Another tab goes on with the jobs: what is under way here is ended and saved first.' },
  page_save_failed: {
    text: 'The last changes are not saved: this device refused them.',
    mend: 'Keep this page open and try again.',
  },
  page_save_full: {
    text: 'The last changes are not saved: this device has no room left.',
    mend: 'Delete a job for good or files you no longer need, and try again. Keep this page open.',
  },
  page_no_storage: {
    text: 'This browser keeps nothing here, as in a private window: {why}.',
    mend: 'Open the page in a normal window.',
  },
  page_kept_by_newer: {
    text: 'The jobs on this device were kept by a newer version of this page, which this one cannot read. They were not touched.',
    mend: 'Connect to the network and load the page again, so that the newer version comes.',
  },
  page_fault: {
    text: 'Something in the program went wrong: {why}.',
    mend: 'What was saved is safe. Load the page again.',
  },
  page_screen_fault: { text: 'This screen met a fault of the program: {why}.' },
  other_tab_unsaved: {
    text: 'The other tab has changes that its device did not take, so it keeps the jobs.',
    mend: 'Look at what it says there, and then work here.',
  },
  other_tab_old: {
    text: 'Another tab holds the jobs open with an older version of this page.',
    mend: 'Close that tab.',
  },
  field_no_number: { text: 'This is no number; write one like 3.5.' },
  field_too_low: { text: 'At least {least} is needed here.' },
  field_too_high: { text: 'At most {most} is possible here.' },
  field_missing: { text: 'A number is needed here.' },
  label_mend: { text: 'Mend' },
  label_practice: { text: 'Practice' },
  label_pressure_screen: { text: 'Pressure' },
  label_listen: { text: 'Listen' },
  label_report: { text: 'Report' },
  detector_not_read: {
    text: 'The installed detector cannot be read by this version and is not asked: {why}.',
    mend: 'Install another on the screen Practice, or remove it there.',
  },
} as const satisfies Record<string, Wording>
