import type { Say } from '../../frame/useSay'

/** How clearly a leak was heard at a point, by rising number. */
export const MARKS = ['none', 'perhaps', 'heard', 'clear'] as const

export type Mark = (typeof MARKS)[number]

const WORDS = ['label_mark_none', 'label_mark_perhaps', 'label_mark_heard', 'label_mark_clear'] as const

/** @param mark From 0; `undefined`: not said yet. */
export function markWords(mark: number | undefined, say: Say): string {
  return say(WORDS[mark ?? -1] ?? 'label_mark_not_said')
}
