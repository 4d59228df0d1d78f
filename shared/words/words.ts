import { ANSWER_WORDS } from './answerWords'
import { CLIP_PROBLEMS } from './clipProblems'
import { FILE_PROBLEMS } from './fileProblems'
import { LINE_PROBLEMS } from './lineProblems'
import { REASON_WORDS } from './reasons'
import { SHEET_PROBLEMS } from './sheetProblems'
import { TAPE_WORDS } from './tapeWords'

/** All words by key. A key stands in one of the lists only; a test keeps that. */
export const WORDS = {
  ...ANSWER_WORDS,
  ...CLIP_PROBLEMS,
  ...FILE_PROBLEMS,
  ...LINE_PROBLEMS,
  ...REASON_WORDS,
  ...SHEET_PROBLEMS,
  ...TAPE_WORDS,
} as const

export type WordKey = keyof typeof WORDS
