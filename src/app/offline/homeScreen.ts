import { withSession } from '../store/changes'
import type { Store } from '../store/store'

/** What Chromium hands out when a page can be put on the home screen; no standard, and not in the browser's types. */
interface InstallOffer extends Event {
  readonly prompt: () => Promise<unknown>
}

/** Keeps the browser's offer to put the page on the home screen until somebody wants it. */
export class HomeScreen {
  private offer: InstallOffer | null = null

  constructor(private readonly store: Store) {
    window.addEventListener('beforeinstallprompt', (event) => {
      event.preventDefault()
      this.put(event as InstallOffer)
    })
    window.addEventListener('appinstalled', () => this.put(null))
  }

  /** Lets the browser ask. */
  async ask(): Promise<void> {
    const { offer } = this
    this.put(null) // an offer can be used once
    await offer?.prompt()
  }

  private put(offer: InstallOffer | null): void {
    this.offer = offer
    this.store.update((state) => withSession(state, { canInstall: offer !== null }))
  }
}
