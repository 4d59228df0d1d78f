/** True where the device can speak. */
export function canSpeak(): boolean {
  return 'speechSynthesis' in window
}

/** Says something aloud; what was being said is cut off. */
export function speak(words: string): void {
  if (!canSpeak()) return
  window.speechSynthesis.cancel()
  const said = new SpeechSynthesisUtterance(words)
  said.lang = document.documentElement.lang
  window.speechSynthesis.speak(said)
}
