import { FormatError } from '../../../shared/base/errors'
import type { HeardClip } from '../../../shared/evidence/heardClip'
import type { JobLine } from '../../../shared/job/job'
import type { DetectorModel } from '../../../shared/learn/model'
import type { Sounding } from '../../../shared/locate/answer'
import type { Database } from '../storage/database'
import { keepHeard, loadHeard, loadSound } from '../storage/sounds'
import { withSession } from '../store/changes'
import { tell } from '../store/notices'
import { shownLine } from '../store/selectors/shownLine'
import { digestsOf, soundingsOf } from '../store/selectors/soundingsOf'
import type { Working } from '../store/state'
import type { Store } from '../store/store'
import { type Analyst, isAborted } from './analyst'
import { buffersOf, soundOf } from './soundOf'

/** From the last change of the line to the next answer, ms. Chosen: a typed number is one answer. */
const CALM_MS = 200

/**
 * Keeps the answer of the line on show current: listens to what was not listened to yet, then locates, and locates
 * again after each change.
 */
export class AnswerKeeper {
  private running: AbortController | null = null
  private timer: number | null = null
  private seen: JobLine | null = null
  private asked: DetectorModel | null = null
  /** What the detector looks at, of the clips that were measured for it since the page was opened. */
  private readonly measured = new Map<string, readonly (number | null)[] | null>()
  private readonly leave: () => void

  constructor(
    private readonly store: Store,
    private readonly analyst: Analyst,
    private readonly database: Database,
  ) {
    this.leave = store.subscribe(() => this.notice())
    this.notice()
  }

  /** Stops working the line out until `goOn`. */
  cancel(): void {
    const lineId = this.seen?.id
    this.stop()
    if (lineId === undefined) return
    this.store.update((state) =>
      withSession(state, { working: null, halted: [...state.session.halted.filter((id) => id !== lineId), lineId] }),
    )
  }

  goOn(): void {
    const lineId = this.seen?.id
    this.store.update((state) => withSession(state, { halted: state.session.halted.filter((id) => id !== lineId) }))
    this.seen = null
    this.notice()
  }

  close(): void {
    this.leave()
    this.stop()
  }

  private notice(): void {
    const state = this.store.get()
    const line = shownLine(state)
    const { detector } = state.session
    const isSame =
      line?.id === this.seen?.id &&
      line?.line === this.seen?.line &&
      line?.sweeps === this.seen?.sweeps &&
      detector === this.asked
    if (isSame) return
    const isOther = line?.id !== this.seen?.id
    this.seen = line
    this.asked = detector
    this.stop()
    if (line === null || state.session.halted.includes(line.id)) return
    this.timer = window.setTimeout(() => void this.work(line), isOther ? 0 : CALM_MS)
  }

  private stop(): void {
    if (this.timer !== null) clearTimeout(this.timer)
    this.timer = null
    this.running?.abort()
    this.running = null
  }

  private async work(line: JobLine): Promise<void> {
    const { answers, detector } = this.store.get().session
    const kept = answers[line.id]
    if (kept?.line === line.line && kept.sweeps === line.sweeps && kept.detector === detector) return this.show(null)
    const running = new AbortController()
    this.running = running
    try {
      await this.listen(line, running.signal)
      const soundings = detector === null ? this.plain(line) : await this.withDetector(line, detector, running.signal)
      this.show({ lineId: line.id, stage: 'locating', done: 0, total: 1 })
      const answer = await this.analyst.call('locate', { line: line.line, soundings }, { signal: running.signal })
      const current = { answer, line: line.line, sweeps: line.sweeps, detector }
      this.store.update((state) =>
        withSession(state, { working: null, answers: { ...state.session.answers, [line.id]: current } }),
      )
    } catch (error) {
      if (isAborted(error)) return
      this.store.update((state) =>
        tell(withSession(state, { working: null }), 'place', 'wrong', {
          key: 'work_failed',
          values: { why: String(error) },
        }),
      )
    }
  }

  private async listen(line: JobLine, signal: AbortSignal): Promise<void> {
    const files = new Map(
      line.sweeps.flatMap((sweep) => sweep.clips.map(({ sound, row }) => [sound?.sha256, row.file] as const)),
    )
    const digests = digestsOf(line).filter((digest) => this.store.get().session.heard[digest] === undefined)
    for (const [done, digest] of digests.entries()) {
      this.show({ lineId: line.id, stage: 'listening', done, total: digests.length })
      const heard = await this.hear(digest, files.get(digest) ?? digest, signal)
      signal.throwIfAborted()
      this.store.update((state) => withSession(state, { heard: { ...state.session.heard, [digest]: heard } }))
    }
  }

  private plain(line: JobLine): Sounding[] {
    return soundingsOf(line, this.store.get().session.heard)
  }

  /** Timbre takes long, so it is only measured where a detector asks for it. */
  private async withDetector(line: JobLine, model: DetectorModel, signal: AbortSignal): Promise<Sounding[]> {
    const { askedDigests, detectedSoundings } = await import('../detector/detectedSoundings')
    const digests = askedDigests(line).filter((digest) => !this.measured.has(digest))
    for (const [done, digest] of digests.entries()) {
      this.show({ lineId: line.id, stage: 'listening', done, total: digests.length })
      this.measured.set(digest, await this.measure(digest, signal))
      signal.throwIfAborted()
    }
    return detectedSoundings(line, this.store.get().session.heard, { model, values: this.measured })
  }

  private async measure(sha256: string, signal: AbortSignal): Promise<readonly (number | null)[] | null> {
    const bytes = await loadSound(this.database, sha256)
    if (bytes === null) return null
    try {
      const sound = await soundOf(bytes, sha256)
      return await this.analyst.call('measure', { sound }, { signal, transfer: buffersOf(sound) })
    } catch (error) {
      if (!(error instanceof FormatError)) throw error
      return null
    }
  }

  private async hear(sha256: string, file: string, signal: AbortSignal): Promise<HeardClip> {
    const kept = await loadHeard(this.database, sha256)
    if (kept !== null) return kept
    const bytes = await loadSound(this.database, sha256)
    signal.throwIfAborted()
    if (bytes === null) return { evidence: null, problems: [{ key: 'sound_lost', severity: 'spoilt', values: {} }] }
    try {
      const sound = await soundOf(bytes, file)
      const heard = await this.analyst.call('hear', { sound }, { signal, transfer: buffersOf(sound) })
      await keepHeard(this.database, sha256, heard).catch(() => undefined) // it can be listened to again
      return heard
    } catch (error) {
      if (!(error instanceof FormatError)) throw error
      return { evidence: null, problems: [{ key: 'unreadable', severity: 'spoilt', values: { why: error.mend } }] }
    }
  }

  private show(working: Working | null): void {
    this.store.update((state) => withSession(state, { working }))
  }
}
