import { waitingToComeBack } from '../comesBack'
import type { PracticeSet } from './practiceSet'
import { inOrder, type SetLog } from './setLog'

/** The clip of a set that is asked next, by its number from 0 on. */
export interface NextOfSet {
  readonly clip: number
  readonly isRepeat: boolean
}

/**
 * What is asked next of a set: what was missed and is due, else the next clip; when all were asked, what was missed and not
 * told right since. It follows from the log alone, so that a page that was closed goes on where it was.
 *
 * @returns `null`: all is done.
 */
export function nextOfSet(set: Pick<PracticeSet, 'clips'>, log: SetLog): NextOfSet | null {
  const told = inOrder(log)
  const waiting = waitingToComeBack(
    told.map(({ clip, said }) => ({ key: String(clip), right: said === set.clips[clip]?.label })),
  )
  const isAllAsked = log.answers.length >= set.clips.length
  for (const [key, { dueAt, step }] of waiting) {
    if (isAllAsked ? step === 0 : told.length >= dueAt) return { clip: Number(key), isRepeat: true }
  }
  return isAllAsked ? null : { clip: log.answers.length, isRepeat: false }
}
