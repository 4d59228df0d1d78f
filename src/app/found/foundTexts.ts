import type { Found, FoundCause, FoundWay } from '../../../shared/job/found'
import { windowHeld } from '../../../shared/job/windowHeld'
import type { Say } from '../frame/useSay'

export const WAY_WORDS = {
  opened: 'label_way_opened',
  'by eye': 'label_way_eye',
  'by ear': 'label_way_ear',
} as const satisfies Record<FoundWay, string>

export const CAUSE_WORDS = {
  root: 'label_cause_root',
  stone: 'label_cause_stone',
  crushed: 'label_cause_crushed',
  joint: 'label_cause_joint',
  fitting: 'label_cause_fitting',
  frost: 'label_cause_frost',
  'drill or stake': 'label_cause_drill',
  age: 'label_cause_age',
  other: 'label_cause_other',
  'not seen': 'label_cause_unseen',
} as const satisfies Record<FoundCause, string>

/** What was found, as a sentence. */
export function foundText(say: Say, { alongM, way, cause }: Found): string {
  if (alongM === null) return say('found_nothing')
  return say('found_at', { way: say(WAY_WORDS[way]), at_m: alongM, cause: say(CAUSE_WORDS[cause]) })
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
