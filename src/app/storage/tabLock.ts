const LOCK = 'yardhark-writer'

/**
 * Lets one tab only change the jobs. A tab without the right waits for it, and may take it over.
 *
 * Where the browser has no locks (a page that is not served securely), every tab may write.
 */
export class TabLock {
  private release: (() => void) | null = null

  /** @param onChange Called with true when this tab may write from now on, with false when it may not. */
  constructor(private readonly onChange: (mayWrite: boolean) => void) {}

  /** Settles once it is known whether this tab may write; goes on waiting when not. */
  async start(): Promise<void> {
    if (!('locks' in navigator)) {
      this.onChange(true)
      return
    }
    const isFree = await this.hold({ ifAvailable: true })
    if (!isFree) {
      this.onChange(false)
      void this.hold({})
    }
  }

  /** Takes the right from the tab that has it. */
  async takeOver(): Promise<void> {
    await this.hold({ steal: true })
  }

  close(): void {
    this.release?.()
  }

  /** Resolves as soon as the lock is held, or is known not to be free. */
  private hold(options: LockOptions): Promise<boolean> {
    return new Promise((known) => {
      navigator.locks
        .request(LOCK, options, (lock) => {
          known(lock !== null)
          if (lock === null) return undefined
          this.onChange(true)
          return new Promise<void>((release) => {
            this.release = release
          })
        })
        .catch(() => {
          this.onChange(false) // another tab has taken it over
          void this.hold({})
        })
    })
  }
}
