import { ANSWER_WORDS } from './answerWords'
import { CAUTION_WORDS } from './cautionWords'
import { CLIP_PROBLEMS } from './clipProblems'
import { CONFIRM_WORDS } from './confirmWords'
import { DETECTOR_WORDS } from './detectorWords'
import { EXPORT_WORDS } from './exportWords'
import { FILE_PROBLEMS } from './fileProblems'
import { FOUND_WORDS } from './foundWords'
import { HELP_WORDS } from './helpWords'
import { HOLD_REASONS } from './holdReasons'
import { HOOK_UP_WORDS } from './hookUpWords'
import { JOB_FILE_PROBLEMS } from './jobFileProblems'
import { JOB_FILE_WORDS } from './jobFileWords'
import { JOBS_WORDS } from './jobsWords'
import { JOIN_WORDS } from './joinWords'
import { LINE_PROBLEMS } from './lineProblems'
import { LINE_WORDS } from './lineWords'
import { LISTEN_WORDS } from './listenWords'
import { MEND_WORDS } from './mendWords'
import { NEXT_WORDS } from './nextWords'
import { OFFLINE_WORDS } from './offlineWords'
import { OPEN_WORDS } from './openWords'
import { PAD_WORDS } from './padWords'
import { PAGE_WORDS } from './pageWords'
import { PLACE_WORDS } from './placeWords'
import { PRACTICE_WORDS } from './practiceWords'
import { PRESSURE_WORDS } from './pressureWords'
import { REASON_WORDS } from './reasons'
import { RECORD_WORDS } from './recordWords'
import { REPORT_WORDS } from './reportWords'
import { SHEET_PROBLEMS } from './sheetProblems'
import { SKETCH_WORDS } from './sketchWords'
import { TAPE_WORDS } from './tapeWords'

/** All words by key. A key stands in one of the lists only; a test keeps that. */
export const WORDS = {
  ...ANSWER_WORDS,
  ...CAUTION_WORDS,
  ...CLIP_PROBLEMS,
  ...CONFIRM_WORDS,
  ...DETECTOR_WORDS,
  ...EXPORT_WORDS,
  ...FILE_PROBLEMS,
  ...FOUND_WORDS,
  ...HELP_WORDS,
  ...HOLD_REASONS,
  ...HOOK_UP_WORDS,
  ...JOB_FILE_PROBLEMS,
  ...JOB_FILE_WORDS,
  ...JOBS_WORDS,
  ...JOIN_WORDS,
  ...LINE_PROBLEMS,
  ...LINE_WORDS,
  ...LISTEN_WORDS,
  ...MEND_WORDS,
  ...NEXT_WORDS,
  ...OPEN_WORDS,
  ...PAD_WORDS,
  ...OFFLINE_WORDS,
  ...PAGE_WORDS,
  ...PLACE_WORDS,
  ...PRACTICE_WORDS,
  ...PRESSURE_WORDS,
  ...RECORD_WORDS,
  ...REASON_WORDS,
  ...REPORT_WORDS,
  ...SHEET_PROBLEMS,
  ...SKETCH_WORDS,
  ...TAPE_WORDS,
} as const

export type WordKey = keyof typeof WORDS
