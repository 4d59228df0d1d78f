import type { Job, JobClip } from '../../../shared/job/job'
import { recordedClip } from '../../../shared/record/recordedClip'
import { newId } from '../newId'
import { type Database, isFull, type KeptRecording } from '../storage/database'
import { listJobs, loadJob, saveJob } from '../storage/jobs'
import { dropStrayChunks, forgetRecording, leftLengthS, leftRecordings } from '../storage/recordings'
import type { Saver } from '../storage/saver'
import { addRecordedClip, withClip } from '../store/actions/addRecordedClip'
import { withSession } from '../store/changes'
import { tell } from '../store/notices'
import type { LeftRecording } from '../store/state'
import type { Store } from '../store/store'
import { KeepingError, RecordingKeeper } from './recordingKeeper'

export interface LeftParts {
  readonly store: Store
  readonly database: Database
  readonly saver: Saver
}

/** Recordings that never came into their job: the app was killed, or there was no room. */
export class LeftRecordings {
  constructor(private readonly parts: LeftParts) {}

  /** Looks for them, and puts them on show; not where another tab has the jobs and may be recording. */
  async find(): Promise<void> {
    const { database, store } = this.parts
    if (store.get().session.readOnly) return
    await dropStrayChunks(database)
    const left: LeftRecording[] = []
    for (const recording of await leftRecordings(database)) {
      const lengthS = await leftLengthS(database, recording.id)
      if (lengthS === 0 || (await this.isInJob(recording))) await forgetRecording(database, recording.id)
      else {
        const { id, jobId, slot, timeS } = recording
        left.push({ id, jobId, point: slot.point, air: slot.air, timeS, lengthS })
      }
    }
    store.update((state) => withSession(state, { left }))
  }

  /** Puts one into its job as a clip, which tells that it is shorter than wanted. */
  async keep(id: string): Promise<void> {
    const { database } = this.parts
    const recording = await database.get('recordings', id)
    if (recording === undefined) return this.find()
    const keeper = new RecordingKeeper({ onEnd: () => undefined, onLost: () => undefined })
    try {
      const assembled = await keeper.assemble(recording)
      if (assembled !== null) {
        const { sound, keptBits, durationS } = assembled
        const isWhole = durationS > recording.about.wantedS - 1e-3
        const about = { ...recording.about, keptBits, endedBy: isWhole ? null : ('killed' as const) }
        await this.putIntoJob(recording, (takenFiles) =>
          recordedClip({ ...recording, sound, recording: about, takenFiles }),
        )
      }
      await forgetRecording(database, id)
      this.tell('good', { key: 'left_kept', values: { point: recording.slot.point } })
    } catch (error) {
      const full = error instanceof KeepingError ? error.full : isFull(error)
      const why = error instanceof Error ? error.message : String(error)
      this.tell('wrong', full ? { key: 'left_full', values: {} } : { key: 'left_not_kept', values: { why } })
    } finally {
      keeper.close()
    }
    await this.find()
  }

  async drop(id: string): Promise<void> {
    await forgetRecording(this.parts.database, id)
    await this.find()
  }

  private async putIntoJob(
    { jobId, lineId }: KeptRecording,
    clipOf: (takenFiles: ReadonlySet<string>) => JobClip,
  ): Promise<void> {
    const { store, database, saver } = this.parts
    const open = store.get().job
    if (open?.id === jobId) {
      store.dispatch(addRecordedClip, { lineId, clip: clipOf(filesOf(open, lineId)), sweepId: newId() })
      await saver.flush()
      if (store.get().session.saving.state === 'failed') throw new Error('the job could not be saved')
      return
    }
    const job = await loadJob(database, jobId)
    if (job === null) throw new Error('its job is gone')
    const clip = clipOf(filesOf(job, lineId))
    const lines = job.lines.map((line) =>
      line.id === lineId ? { ...line, sweeps: withClip(line.sweeps, clip, newId()) } : line,
    )
    await saveJob(database, { ...job, lines })
    const lists = await listJobs(database)
    store.update((state) => withSession(state, lists))
  }

  /** The app was killed after the clip was saved and before that was noted. */
  private async isInJob({ jobId, slot, timeS }: KeptRecording): Promise<boolean> {
    const { store, database } = this.parts
    const open = store.get().job
    const job = open?.id === jobId ? open : await loadJob(database, jobId).catch(() => null)
    return (job?.lines ?? []).some((line) =>
      [...line.sweeps.flatMap(({ clips }) => clips), ...(line.removedClips ?? [])].some(
        ({ row }) => row.timeS === timeS && row.point === slot.point && row.air === slot.air,
      ),
    )
  }

  private tell(severity: 'good' | 'wrong', words: Parameters<typeof tell>[3]): void {
    this.parts.store.update((state) => tell(state, 'page', severity, words))
  }
}

/** Paths of all clips of a line, also of those taken out. */
export function filesOf(job: Job, lineId: string): ReadonlySet<string> {
  const line = job.lines.find(({ id }) => id === lineId)
  const clips = [...(line?.sweeps ?? []).flatMap((sweep) => sweep.clips), ...(line?.removedClips ?? [])]
  return new Set(clips.map(({ row }) => row.file))
}
