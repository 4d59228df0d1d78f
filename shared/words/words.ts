import { FIRST_WORDS } from './firstWords'
import { LATER_WORDS } from './laterWords'

/** All words by key. */
export const WORDS = { ...FIRST_WORDS, ...LATER_WORDS } as const

export type WordKey = keyof typeof WORDS
