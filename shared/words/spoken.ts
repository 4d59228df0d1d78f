import { FIRST_WORDS } from './firstWords'
import type { Wording } from './wording'

// The one thing that the core keeps between calls: it only ever grows, and to what the program was built with.
let spoken: Readonly<Record<string, Wording>> = FIRST_WORDS

/** Words that come later than a page's first load: from now on sentences can be made of them. */
export function addWords(words: Readonly<Record<string, Wording>>): void {
  spoken = { ...spoken, ...words }
}

/** @returns `undefined` for a key without words, or whose words have not come yet. */
export function wordingOf(key: string): Wording | undefined {
  return Object.hasOwn(spoken, key) ? spoken[key] : undefined
}
