/** Keeps the screen awake between `hold` and `release`; where a phone cannot, it sleeps when it likes. */
export class WakeLock {
  private wanted = false
  private lock: WakeLockSentinel | null = null

  private readonly onVisibility = () => void this.take() // the phone takes it away with the page

  hold(): void {
    this.wanted = true
    document.addEventListener('visibilitychange', this.onVisibility)
    void this.take()
  }

  release(): void {
    this.wanted = false
    document.removeEventListener('visibilitychange', this.onVisibility)
    void this.lock?.release().catch(() => undefined)
    this.lock = null
  }

  private async take(): Promise<void> {
    if (!this.wanted || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return
    if (this.lock !== null && !this.lock.released) return
    try {
      const lock = await navigator.wakeLock.request('screen')
      if (this.wanted) this.lock = lock
      else void lock.release()
    } catch {
      // refused, as with an empty battery: recording goes on without it
    }
  }
}
