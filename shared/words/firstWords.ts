import { ANSWER_WORDS } from './answerWords'
import { CAUTION_WORDS } from './cautionWords'
import { CLIP_ORIGIN_WORDS } from './clipOriginWords'
import { CLIP_PROBLEMS } from './clipProblems'
import { CONFIRM_WORDS } from './confirmWords'
import { EXPORT_WORDS } from './exportWords'
import { FILE_PROBLEMS } from './fileProblems'
import { JOB_FILE_PROBLEMS } from './jobFileProblems'
import { JOBS_WORDS } from './jobsWords'
import { JOIN_WORDS } from './joinWords'
import { LINE_PROBLEMS } from './lineProblems'
import { LINE_WORDS } from './lineWords'
import { OFFLINE_WORDS } from './offlineWords'
import { OPEN_WORDS } from './openWords'
import { PAGE_WORDS } from './pageWords'
import { PLACE_WORDS } from './placeWords'
import { REASON_WORDS } from './reasons'
import { SHEET_PROBLEMS } from './sheetProblems'

/** Words that a page needs before it has fetched its other screens. A key stands in one of the lists only; a test keeps that. */
export const FIRST_WORDS = {
  ...ANSWER_WORDS,
  ...CAUTION_WORDS,
  ...CLIP_PROBLEMS,
  ...EXPORT_WORDS,
  ...FILE_PROBLEMS,
  ...JOB_FILE_PROBLEMS,
  ...JOBS_WORDS,
  ...JOIN_WORDS,
  ...LINE_PROBLEMS,
  ...OFFLINE_WORDS,
  ...OPEN_WORDS,
  ...PAGE_WORDS,
  ...REASON_WORDS,
  ...SHEET_PROBLEMS,
  ...CONFIRM_WORDS,
  ...LINE_WORDS,
  ...PLACE_WORDS,
  ...CLIP_ORIGIN_WORDS,
} as const
