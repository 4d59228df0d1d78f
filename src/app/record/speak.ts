import type { Slot } from '../../../shared/record/slot'
import { sentence } from '../../../shared/words/sentence'

/** True where the device can speak. */
export function canSpeak(): boolean {
  return 'speechSynthesis' in window
}

/** Says which clip comes next; `null`: none. */
export function sayNext(next: Slot | null): void {
  if (next === null) speak(sentence('say_all_done', {}))
  else if (next.staysPut) speak(sentence('say_turn_off', {}))
  else speak(sentence(next.air === 'on' ? 'say_next_on' : 'say_next_off', { point: next.point }))
}

/** Says something aloud; what was being said is cut off. */
function speak(words: string): void {
  if (!canSpeak()) return
  window.speechSynthesis.cancel()
  const said = new SpeechSynthesisUtterance(words)
  said.lang = document.documentElement.lang
  window.speechSynthesis.speak(said)
}
