const LOCK = 'yardhark-writer'

/** Between tabs: the one that wants to write asks, the one that may tells that it is coming, and then that all is saved. */
type TabMessage = 'ask' | 'coming' | 'saved' | 'refused'

/** A tab that a phone has put to sleep answers nothing; it has saved when it was left. After this the right is taken, ms. */
const UNANSWERED_MS = 3000

export interface TabLockListeners {
  /** Called with true when this tab may write from now on, with false when it may not. */
  readonly onChange: (mayWrite: boolean) => void
  /** Another tab wants the right: ends and saves what is under way. False when that failed: the right stays here then. */
  readonly beforeHandOver: () => Promise<boolean>
}

/**
 * Lets one tab only change the jobs. A tab without the right waits for it, and may ask for it: the one that has it saves
 * first.
 *
 * Where the browser has no locks (a page that is not served securely), every tab may write.
 */
export class TabLock {
  private release: (() => void) | null = null
  private readonly channel = new BroadcastChannel(LOCK)
  private asking: ((answer: TabMessage | null) => void) | null = null

  constructor(private readonly listeners: TabLockListeners) {
    this.channel.onmessage = ({ data }: MessageEvent<TabMessage>) => {
      if (data !== 'ask') this.asking?.(data)
      else if (this.release !== null) void this.handOver()
    }
  }

  /** Settles once it is known whether this tab may write; goes on waiting when not. */
  async start(): Promise<void> {
    if (!('locks' in navigator)) {
      this.listeners.onChange(true)
      return
    }
    const isFree = await this.hold({ ifAvailable: true })
    if (!isFree) {
      this.listeners.onChange(false)
      void this.hold({})
    }
  }

  /** Takes the right from the tab that has it, once it has saved. @returns False when it could not save, and keeps it. */
  async takeOver(): Promise<boolean> {
    const answer = await this.ask()
    if (answer === 'refused') return false
    await this.hold({ steal: true })
    return true
  }

  close(): void {
    this.release?.()
    this.channel.close()
  }

  /** @returns `null` when nobody answers. */
  private ask(): Promise<TabMessage | null> {
    return new Promise((answered) => {
      const end = (answer: TabMessage | null) => {
        clearTimeout(timer)
        if (answer === 'coming') return
        this.asking = null
        answered(answer)
      }
      const timer = setTimeout(() => end(null), UNANSWERED_MS)
      this.asking = end
      this.tell('ask')
    })
  }

  private async handOver(): Promise<void> {
    this.tell('coming')
    const saved = await this.listeners.beforeHandOver().catch(() => false)
    this.tell(saved ? 'saved' : 'refused')
  }

  private tell(message: TabMessage): void {
    this.channel.postMessage(message)
  }

  /** Resolves as soon as the lock is held, or is known not to be free. */
  private hold(options: LockOptions): Promise<boolean> {
    return new Promise((known) => {
      navigator.locks
        .request(LOCK, options, (lock) => {
          known(lock !== null)
          if (lock === null) return undefined
          this.asking?.('saved') // the tab that had it is gone
          this.listeners.onChange(true)
          return new Promise<void>((release) => {
            this.release = release
          })
        })
        .catch(() => {
          this.release = null
          this.listeners.onChange(false) // another tab has taken it over
          void this.hold({})
        })
    })
  }
}
