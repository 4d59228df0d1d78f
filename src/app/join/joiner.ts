import type { Job, JobClip, JobLine } from '../../../shared/job/job'
import { freeSweepName } from '../../../shared/record/recordInto'
import { pointsOnLine } from '../../../shared/sketch/pointsOnLine'
import { type AssignedClip, assignByName, assignInOrder } from '../../../shared/sweep/assignClips'
import { countedBehind, joinedRows, movedClip } from '../../../shared/sweep/joinClips'
import type { SweepRow } from '../../../shared/sweep/sweep'
import { newId } from '../newId'
import type { Source } from '../open/source'
import type { Database } from '../storage/database'
import { isFull } from '../storage/database'
import { keepSound } from '../storage/sounds'
import { joinClips } from '../store/actions/joinClips'
import { withSession } from '../store/changes'
import { tell, untell } from '../store/notices'
import type { Store } from '../store/store'
import type { Joining, JoinWay } from './joining'

const SOUND = /\.(?:wav|wave|bwf|rf64|flac|ogg|oga|opus|mp3|m4a|aac)$/i
/** More than anybody assigns in one go. Chosen. */
const MOST_CLIPS = 1000
/** Chosen: as for clips out of a folder. */
const MOST_CLIP_BYTES = 600e6

/**
 * Holds clips of a recorder until it is told which point each is of, and then puts them into the open job. Clips of no
 * point stay on the list until somebody says what to do with them.
 */
export class Joiner {
  private files = new Map<string, Blob>()

  constructor(
    private readonly store: Store,
    private readonly database: Database,
  ) {}

  /**
   * Takes clips that are to be told to points.
   *
   * @returns False when it is not for them: the line has no points yet, or there is nothing to tell.
   */
  offer({ name, files }: Source, lineId: string): boolean {
    const line = lineOf(this.store.get().job, lineId)
    const points = line === null ? [] : pointsOnLine(line)
    const sounds = files.filter(({ path }) => SOUND.test(path))
    if (points.length === 0 || sounds.length === 0 || sounds.length > MOST_CLIPS) return false
    this.files = new Map(sounds.map(({ path, bytes }) => [path, bytes]))
    const joining: Joining = {
      lineId,
      name,
      clips: [],
      leftOut: files.filter(({ path }) => !SOUND.test(path)).map(({ path }) => path),
      sweepId: null,
      how: 'name',
      firstPoint: points[0]!.point,
    }
    this.show({ ...joining, clips: this.assigned(joining) })
    return true
  }

  /** Tells all clips anew. */
  assign(how: JoinWay, firstPoint: number | null): void {
    this.change((joining) => {
      const next = { ...joining, how, firstPoint }
      return { ...next, clips: this.assigned(next) }
    })
  }

  joinTo(sweepId: string | null): void {
    this.change((joining) => ({
      ...joining,
      sweepId,
      clips: countedBehind(joining.clips, this.rowsOf(joining.sweepId), this.rowsOf(sweepId)),
    }))
  }

  move(name: string, to: Partial<Pick<AssignedClip, 'point' | 'air'>>): void {
    this.change((joining) => ({
      ...joining,
      clips: movedClip(joining.clips, this.rowsOf(joining.sweepId), name, to),
    }))
  }

  retake(name: string, take: number): void {
    this.change((joining) => ({
      ...joining,
      clips: joining.clips.map((clip) => (clip.name === name ? { ...clip, take } : clip)),
    }))
  }

  /** Leaves all that is still on the list. */
  close(): void {
    this.files.clear()
    this.show(null)
  }

  /** Keeps the clips that have a point and puts them into the job; the others stay on the list. */
  async join(): Promise<void> {
    const { joining } = this.store.get().session
    const line = lineOf(this.store.get().job, joining?.lineId ?? '')
    if (joining === null || line === null) return
    this.store.update((state) => untell(state, 'join'))
    const kept = joining.sweepId === null ? null : line.sweeps.find(({ id }) => id === joining.sweepId)
    const sweep = kept?.name ?? freeSweepName(line.sweeps, line.removedClips)
    const taken = new Set(
      [...line.sweeps.flatMap(({ clips }) => clips), ...(line.removedClips ?? [])].map(({ row }) => row.file),
    )
    const rows = joinedRows(joining.clips, pointsOnLine(line), { sweep, taken })
    try {
      const clips = await this.kept(rows)
      this.store.dispatch(joinClips, { lineId: line.id, sweep, sweepId: kept?.id ?? newId(), clips })
      this.leave(rows.map(({ name }) => name))
      this.store.update((state) =>
        tell(state, 'join', 'good', { key: 'join_done', values: { clips: clips.length, sweep } }),
      )
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error)
      const words = isFull(error) ? { key: 'device_full', values: {} } : { key: 'open_failed', values: { why } }
      this.store.update((state) => tell(state, 'join', 'wrong', words))
    }
  }

  private async kept(rows: readonly { readonly name: string; readonly row: SweepRow }[]): Promise<JobClip[]> {
    const clips: JobClip[] = []
    for (const { name, row } of rows) {
      const bytes = this.files.get(name)
      if (bytes === undefined) continue
      if (bytes.size > MOST_CLIP_BYTES) {
        const values = { size_mb: Math.round(bytes.size / 1e6), most_mb: MOST_CLIP_BYTES / 1e6 }
        clips.push({ row, sound: null, problems: [{ key: 'file_too_large', severity: 'spoilt', values }] })
      } else clips.push({ row, sound: await keepSound(this.database, bytes), problems: [] })
    }
    return clips
  }

  private assigned({ lineId, how, firstPoint, sweepId }: Joining): AssignedClip[] {
    const line = lineOf(this.store.get().job, lineId)
    const points = line === null ? [] : pointsOnLine(line).map(({ point }) => point)
    const names = [...this.files.keys()]
    const from = Math.max(0, points.indexOf(firstPoint ?? Number.NaN))
    const clips = how === 'name' ? assignByName(names, points) : assignInOrder(names, points.slice(from), how)
    return countedBehind(clips, [], this.rowsOf(sweepId))
  }

  private rowsOf(sweepId: string | null): SweepRow[] {
    const sweeps = this.store.get().job?.lines.flatMap((line) => line.sweeps) ?? []
    return sweeps.find(({ id }) => id === sweepId)?.clips.map(({ row }) => row) ?? []
  }

  private leave(names: readonly string[]): void {
    for (const name of names) this.files.delete(name)
    this.change((joining) => ({ ...joining, clips: joining.clips.filter((clip) => this.files.has(clip.name)) }))
    if (this.files.size === 0) this.show(null)
  }

  private change(change: (joining: Joining) => Joining): void {
    const { joining } = this.store.get().session
    if (joining !== null) this.show(change(joining))
  }

  private show(joining: Joining | null): void {
    this.store.update((state) => withSession(state, { joining }))
  }
}

function lineOf(job: Job | null, lineId: string): JobLine | null {
  return job?.lines.find((line) => line.id === lineId) ?? null
}
