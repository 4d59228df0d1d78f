import { withSession } from '../store/changes'
import type { Store } from '../store/store'
import { isUnderWay } from './isUnderWay'
import type { OfflineAsk, OfflineTold } from './messages'
import type { OfflineState } from './offlineState'

/** How often a page that stays open for days looks for a newer version, ms. Chosen. */
const LOOK_AGAIN_MS = 3_600_000

/** Has a service worker keep a copy of the page for use without a signal, and reports how far that is. */
export class OfflineKeeper {
  private registration: ServiceWorkerRegistration | null = null
  private lookedMs = 0
  private isTaking = false

  /**
   * @param nowMs A clock that only goes on.
   * @param beforeReload What must be done before the page is loaded anew.
   */
  constructor(
    private readonly store: Store,
    private readonly nowMs: () => number,
    private readonly beforeReload: () => Promise<void>,
  ) {}

  /** Begins, or begins again after a failure. */
  async start(): Promise<void> {
    if (!window.isSecureContext) return this.show({ stage: 'unable', why: 'not_secure' })
    if (!('serviceWorker' in navigator)) return this.show({ stage: 'unable', why: 'not_known' })
    const { serviceWorker } = navigator
    const isFirst = this.lookedMs === 0
    this.lookedMs = this.nowMs()
    if (isFirst) {
      serviceWorker.addEventListener('message', (event: MessageEvent<OfflineTold>) => this.take(event.data))
      serviceWorker.startMessages()
      document.addEventListener('visibilitychange', () => void this.lookForNewer())
    }
    this.show({ stage: 'keeping', done: 0, total: 0 })
    try {
      const registration = await serviceWorker.register(new URL('sw.js', document.baseURI), { updateViaCache: 'none' })
      this.registration = registration
      const { installing } = registration
      installing?.addEventListener('statechange', () => this.noticeEnd(installing.state))
      registration.active?.postMessage('check' satisfies OfflineAsk)
    } catch {
      // Without a connection the browser may not even look whether there is a newer script.
      const kept = await serviceWorker.getRegistration().catch(() => undefined)
      this.registration = kept ?? null
      if (kept?.active) kept.active.postMessage('check' satisfies OfflineAsk)
      else this.show({ stage: 'failed', why: 'refused', file: 'sw.js' })
    }
  }

  /** Loads the newer version; nothing that is kept changes by it. Does nothing while anything is under way. */
  async takeNewer(): Promise<void> {
    const active = this.registration?.active
    if (!active) return
    await this.beforeReload()
    if (isUnderWay(this.store.get())) return
    this.isTaking = true
    active.postMessage('take' satisfies OfflineAsk)
  }

  private take(told: OfflineTold): void {
    if (told.kind === 'taken') {
      if (this.isTaking) location.reload()
      else this.store.update((state) => withSession(state, { newerVersion: 'taken' }))
    } else if (told.kind === 'kept') {
      this.store.update((state) =>
        withSession(state, { offline: { stage: 'kept' }, newerVersion: told.newer ? 'ready' : 'none' }),
      )
    } else if (told.newer) {
      return // the version in use is complete, and goes on; a newer one that could not be fetched is tried again later
    } else if (told.kind === 'keeping') this.show({ stage: 'keeping', done: told.done, total: told.total })
    else this.show({ stage: 'failed', why: told.why, file: told.file })
  }

  /** A browser may end the keeping without a word. */
  private noticeEnd(state: ServiceWorkerState): void {
    if (state !== 'redundant' || this.store.get().session.offline.stage !== 'keeping') return
    this.show({ stage: 'failed', why: 'not_fetched', file: 'sw.js' })
  }

  private async lookForNewer(): Promise<void> {
    if (document.visibilityState !== 'visible' || this.nowMs() - this.lookedMs < LOOK_AGAIN_MS) return
    this.lookedMs = this.nowMs()
    await this.registration?.update().catch(() => undefined) // without a connection there is nothing newer to be had
  }

  private show(offline: OfflineState): void {
    this.store.update((state) => withSession(state, { offline }))
  }
}
