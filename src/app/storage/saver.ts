import type { Job } from '../../../shared/job/job'
import { withSession } from '../store/changes'
import type { Device, Saving } from '../store/state'
import type { Store } from '../store/store'
import { type Database, isFull } from './database'
import { saveDevice } from './device'
import { listJobs, saveJob } from './jobs'

/** From the last change to the save, ms. Chosen: a typed number is one save, and nobody waits for it. */
const SAVE_DELAY_MS = 350

/**
 * Saves the open job and the device's settings soon after each change, and at once when the page hides.
 *
 * Starts with what is in the store as saved: whatever is loaded must be put there before. A change during a save is
 * saved after it; a save that failed stays on show and is tried again with the next change, or by `flush`.
 */
export class Saver {
  private savedJob: Job | null
  /** What was last tried, saved or not: the same is not tried again by itself. */
  private triedJob: Job | null
  private triedDevice: Device
  private savedDevice: Device
  private timer: number | null = null
  private running: Promise<void> | null = null
  private readonly leave: () => void

  constructor(
    private readonly store: Store,
    private readonly database: Database,
  ) {
    this.savedJob = store.get().job
    this.savedDevice = store.get().device
    this.triedJob = this.savedJob
    this.triedDevice = this.savedDevice
    const leaveStore = store.subscribe(() => this.noticeChange())
    const onHide = () => void this.flush()
    const onVisibility = () => {
      if (document.visibilityState === 'hidden') onHide()
    }
    window.addEventListener('pagehide', onHide)
    document.addEventListener('visibilitychange', onVisibility)
    this.leave = () => {
      leaveStore()
      window.removeEventListener('pagehide', onHide)
      document.removeEventListener('visibilitychange', onVisibility)
    }
  }

  /** A job that came out of storage, or was just put into it, need not be saved again. */
  accept(job: Job | null): void {
    this.savedJob = job
    this.triedJob = job
  }

  /** Saves now what is not saved yet, and waits for it. */
  async flush(): Promise<void> {
    if (this.timer !== null) clearTimeout(this.timer)
    this.timer = null
    if (this.running !== null) await this.running
    if (this.isUnsaved()) await this.save()
  }

  async close(): Promise<void> {
    this.leave()
    await this.flush()
  }

  private isUnsaved(): boolean {
    const { job, device, session } = this.store.get()
    if (session.readOnly) return false
    return device !== this.savedDevice || (job !== null && job !== this.savedJob)
  }

  private noticeChange(): void {
    const { job, device } = this.store.get()
    if (this.timer !== null || this.running !== null || !this.isUnsaved()) return
    if (job === this.triedJob && device === this.triedDevice) return
    this.timer = window.setTimeout(() => this.saveWhenCalm(job, device), SAVE_DELAY_MS)
    if (this.store.get().session.saving.state === 'saved') this.show({ state: 'waiting' })
  }

  /** Waits on while changes keep coming. */
  private saveWhenCalm(job: Job | null, device: Device): void {
    this.timer = null
    const now = this.store.get()
    if (now.job !== job || now.device !== device) this.noticeChange()
    else void this.flush()
  }

  private async save(): Promise<void> {
    const { job, device } = this.store.get()
    this.triedJob = job
    this.triedDevice = device
    this.running = this.write(job, device)
    await this.running
    this.running = null
    this.noticeChange()
  }

  private async write(job: Job | null, device: Device): Promise<void> {
    this.show({ state: 'saving' })
    try {
      if (device !== this.savedDevice) await saveDevice(this.database, device)
      this.savedDevice = device
      if (job !== null && job !== this.savedJob) {
        await saveJob(this.database, job)
        this.savedJob = job
        const lists = await listJobs(this.database)
        this.store.update((state) => withSession(state, lists))
      }
      this.show({ state: 'saved' })
    } catch (error) {
      this.show({ state: 'failed', full: isFull(error) })
    }
  }

  private show(saving: Saving): void {
    this.store.update((state) => withSession(state, { saving }))
  }
}
