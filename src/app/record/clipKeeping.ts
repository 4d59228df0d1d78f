import { recordedClip } from '../../../shared/record/recordedClip'
import type { Slot } from '../../../shared/record/slot'
import type { EarlyEnd } from '../../../shared/sweep/phoneAccount'
import type { Keyed } from '../../../shared/words/sentence'
import { newId } from '../newId'
import { type Database, isFull, type KeptRecording } from '../storage/database'
import { beginRecording } from '../storage/recordings'
import type { Saver } from '../storage/saver'
import { addRecordedClip } from '../store/actions/addRecordedClip'
import type { Store } from '../store/store'
import { filesOf } from './leftRecordings'
import { KeepingError, RecordingKeeper } from './recordingKeeper'

export interface ClipKeepingParts {
  readonly store: Store
  readonly database: Database
  readonly saver: Saver
  /** Looks again for recordings that never came into their job. */
  readonly findLeft: () => Promise<void>
}

export interface ClipKeepingListeners {
  /** The last chunk of the clip under way is durable, or lost. */
  readonly onEnd: () => void
  /** A chunk of it was refused by the device. */
  readonly onLost: (trouble: Keyed) => void
}

/** The clip recorded last, by its place in the job. */
export interface LastClip {
  readonly lineId: string
  readonly sweep: string
  readonly file: string
  readonly slot: Slot
}

/** What came of a clip that has ended. */
export interface KeptOutcome {
  /** `null` when it is not in its job. */
  readonly clip: LastClip | null
  readonly trouble: Keyed | null
}

/** The way of a recording from its first chunk into its job; one at a time. What fails on it stays to be kept later. */
export class ClipKeeping {
  private readonly keeper: RecordingKeeper
  private current: KeptRecording | null = null
  private isKeeping = false

  constructor(
    private readonly parts: ClipKeepingParts,
    listeners: ClipKeepingListeners,
  ) {
    this.keeper = new RecordingKeeper({
      onEnd: (id) => {
        if (this.current?.id === id) listeners.onEnd()
      },
      onLost: (id, full) => {
        if (this.current?.id === id) listeners.onLost(troubleOfKeeping(full, ''))
      },
    })
  }

  /** A clip has begun that `keep` was not called for. */
  get hasBegun(): boolean {
    return this.current !== null
  }

  /** A clip has begun that is not in its job yet. */
  get isUnderWay(): boolean {
    return this.hasBegun || this.isKeeping
  }

  /** @returns Where the audio thread is to put its chunks. */
  sink(): MessagePort {
    return this.keeper.sink()
  }

  /** Notes that a recording begins. @returns What stands against it. */
  async begin(recording: KeptRecording): Promise<Keyed | null> {
    this.current = recording
    try {
      await beginRecording(this.parts.database, recording)
      return null
    } catch (error) {
      return troubleOfKeeping(isFull(error), String(error))
    }
  }

  /** Puts the clip that has ended into its job. */
  async keep(endedBy: EarlyEnd | null): Promise<KeptOutcome> {
    const { current } = this
    if (current === null) return NOTHING
    this.current = null
    this.isKeeping = true
    try {
      return await this.assemble(current, endedBy)
    } catch (error) {
      await this.parts.findLeft()
      const full = error instanceof KeepingError ? error.full : isFull(error)
      return { clip: null, trouble: troubleOfKeeping(full, String(error)) }
    } finally {
      this.isKeeping = false
    }
  }

  private async assemble(current: KeptRecording, endedBy: EarlyEnd | null): Promise<KeptOutcome> {
    const assembled = await this.keeper.assemble(current)
    if (assembled === null) {
      await this.keeper.forget(current.id)
      return { clip: null, trouble: { key: 'record_nothing', values: {} } }
    }
    if (!this.isOpen(current)) {
      await this.parts.findLeft()
      return NOTHING
    }
    const { sound, keptBits } = assembled
    const recording = { ...current.about, keptBits, endedBy }
    return { clip: await this.putIntoJob(current, { sound, recording }), trouble: null }
  }

  /** Its job and line are open, and may be changed here. */
  private isOpen({ jobId, lineId }: KeptRecording): boolean {
    const { job, session } = this.parts.store.get()
    return job?.id === jobId && !session.readOnly && job.lines.some(({ id }) => id === lineId)
  }

  private async putIntoJob(
    { id, lineId, sweep, slot, contact, timeS }: KeptRecording,
    heard: Pick<Parameters<typeof recordedClip>[0], 'sound' | 'recording'>,
  ): Promise<LastClip> {
    const { store, saver } = this.parts
    const takenFiles = filesOf(store.get().job!, lineId)
    const clip = recordedClip({ ...heard, slot, sweep, contact, timeS, takenFiles })
    store.dispatch(addRecordedClip, { lineId, clip, sweepId: newId() })
    await saver.flush()
    if (store.get().session.saving.state === 'failed') await this.parts.findLeft()
    else await this.keeper.forget(id)
    return { lineId, sweep, file: clip.row.file, slot }
  }
}

const NOTHING: KeptOutcome = { clip: null, trouble: null }

function troubleOfKeeping(full: boolean, why: string): Keyed {
  return full ? { key: 'record_full', values: {} } : { key: 'record_not_kept', values: { why } }
}
