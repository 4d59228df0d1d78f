import type { Found } from '../../../shared/job/found'
import { windowHeld } from '../../../shared/job/windowHeld'
import { CHOICE_WORDS } from '../../../shared/report/choiceWords'
import type { Say } from '../frame/useSay'

/** What was found, as a sentence. */
export function foundText(say: Say, { alongM, way, cause }: Found): string {
  if (alongM === null) return say('found_nothing')
  return say('found_at', {
    way: say(CHOICE_WORDS.foundWay[way]),
    at_m: alongM,
    cause: say(CHOICE_WORDS.foundCause[cause]),
  })
}

/** How the window did that had been shown before. */
export function heldText(say: Say, found: Found): string {
  const result = windowHeld(found)
  if (result === null || found.shown === null) return say('found_no_window')
  const [from_m, to_m] = found.shown.windowM
  if (result.errorM === null) return say('found_window_empty', { from_m, to_m })
  const values = { from_m, to_m, away_m: Math.abs(result.errorM) }
  return result.held ? say('found_held', values) : say('found_missed', values)
}
