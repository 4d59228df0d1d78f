import { DETECTOR_WORDS } from './detectorWords'
import { FOUND_WORDS } from './foundWords'
import { HELP_WORDS } from './helpWords'
import { HOLD_REASONS } from './holdReasons'
import { HOOK_UP_WORDS } from './hookUpWords'
import { INSTALL_WORDS } from './installWords'
import { JOB_FILE_WORDS } from './jobFileWords'
import { LISTEN_WORDS } from './listenWords'
import { MEND_WORDS } from './mendWords'
import { NEXT_WORDS } from './nextWords'
import { PAD_WORDS } from './padWords'
import { PRACTICE_WORDS } from './practiceWords'
import { PRESSURE_WORDS } from './pressureWords'
import { RECORD_WORDS } from './recordWords'
import { REPORT_WORDS } from './reportWords'
import { SECOND_EAR_WORDS } from './secondEarWords'
import { SKETCH_WORDS } from './sketchWords'
import { TAPE_WORDS } from './tapeWords'

/** Words of what a page fetches after it is there, and of the command line. */
export const LATER_WORDS = {
  ...PRACTICE_WORDS,
  ...RECORD_WORDS,
  ...PAD_WORDS,
  ...REPORT_WORDS,
  ...PRESSURE_WORDS,
  ...SKETCH_WORDS,
  ...HELP_WORDS,
  ...INSTALL_WORDS,
  ...MEND_WORDS,
  ...FOUND_WORDS,
  ...HOOK_UP_WORDS,
  ...LISTEN_WORDS,
  ...HOLD_REASONS,
  ...DETECTOR_WORDS,
  ...JOB_FILE_WORDS,
  ...SECOND_EAR_WORDS,
  ...NEXT_WORDS,
  ...TAPE_WORDS,
} as const
