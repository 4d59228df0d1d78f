import { FormatError } from '../../../shared/base/errors'
import { printable } from '../../../shared/base/shown'
import type { Job, JobLine, JobSweep } from '../../../shared/job/job'
import { readLineJson } from '../../../shared/line/readLineJson'
import type { Keyed } from '../../../shared/words/sentence'
import { sentence } from '../../../shared/words/sentence'
import type { ReadFolder, ToldLayout } from '../../worker/protocol'
import { type Analyst, isAborted } from '../analysis/analyst'
import type { Joiner } from '../join/joiner'
import { newId } from '../newId'
import type { ScreenName } from '../screens/screenNames'
import { type Database, isFull } from '../storage/database'
import type { Saver } from '../storage/saver'
import { addLine } from '../store/actions/addLine'
import { addSweeps } from '../store/actions/addSweeps'
import { withSession } from '../store/changes'
import { tell, untell } from '../store/notices'
import type { NoticePlace, Opening } from '../store/state'
import type { Store } from '../store/store'
import { freeName } from './freeName'
import { fromDemo } from './fromDemo'
import { fromDrop } from './fromDrop'
import { fromFiles, isZip } from './fromFiles'
import { keepFolder } from './keepFolder'
import type { Source, SourceFile } from './source'
import { type SweepRoot, sweepRoot } from './sweepRoot'

/** Where what is opened goes: a job of its own, another line of the open job, or more sweeps of one of its lines. */
export type Target =
  | { readonly kind: 'job' }
  | { readonly kind: 'line' }
  | { readonly kind: 'sweep'; readonly lineId: string }

/** What was opened and read, and waits for the user to say where its clips lie. */
interface Asking {
  readonly source: Source
  readonly root: SweepRoot
  readonly target: Target
}

/** The parts of the program that opening needs. */
export interface OpenerParts {
  readonly store: Store
  readonly analyst: Analyst
  readonly database: Database
  /** Gets clips for a line that has points already. */
  readonly joiner: Joiner
  readonly nowS: () => number
  readonly saver: Saver
  /** Keeps a new job and shows it on a screen. */
  readonly showNewJob: (job: Job, screen: ScreenName) => Promise<void>
  readonly showLine: (lineId: string) => void
}

/**
 * Opens sweep folders, zips of one, loose clips and the demo, one at a time. Nothing that was there changes before all
 * of it was read and kept; what is wrong is told where it was asked for.
 */
export class Opener {
  private running: AbortController | null = null
  private asking: Asking | null = null

  constructor(private readonly parts: OpenerParts) {}

  demo(): Promise<void> {
    return this.open({ kind: 'job' }, async (signal) => {
      const name = sentence('label_demo', {})
      return fromDemo(name, signal, (done, total) => this.show({ stage: 'fetching', name, done, total }))
    })
  }

  /** @param files Of a folder picker, or loose clips, or one zip. */
  files(files: readonly File[], target: Target): Promise<void> {
    return this.open(target, async (signal) => {
      const left = await this.takenIn(files, target, signal)
      return left.length === 0 ? null : this.unpacked(fromFiles(left, sentence('label_loose_clips', {})), signal)
    })
  }

  /** @param entries As `droppedEntries` took them. */
  dropped(entries: readonly FileSystemEntry[], target: Target): Promise<void> {
    return this.open(target, async (signal) => {
      const { folder, files } = await fromDrop(entries)
      const loose = files.flatMap(({ bytes }) => (bytes instanceof File ? bytes : []))
      const left = folder === null ? await this.takenIn(loose, target, signal) : loose
      if (left.length === 0 && files.length > 0) return null
      if (left.length < loose.length) return this.unpacked(fromFiles(left, sentence('label_loose_clips', {})), signal)
      return this.unpacked({ name: folder ?? sentence('label_loose_clips', {}), files }, signal)
    })
  }

  /** Goes on with numbered clips once it is said where they lie. */
  async layout(layout: ToldLayout): Promise<void> {
    const { asking } = this
    if (asking === null) return
    await this.guarded(asking.target, async (signal) => {
      const read = await this.read(asking, layout, signal)
      await this.keep(asking, read, signal)
    })
  }

  cancel(): void {
    this.running?.abort()
    this.asking = null
    this.show(null)
  }

  /**
   * Job files and opinions among loose files are taken in.
   *
   * @returns The other files.
   */
  private async takenIn(files: readonly File[], target: Target, signal: AbortSignal): Promise<readonly File[]> {
    const mayBe = files.every(
      ({ name, webkitRelativePath }) => webkitRelativePath === '' && /\.(?:zip|json)$/i.test(name),
    )
    if (target.kind !== 'job' || !mayBe) return files
    const { takeIn } = await import('../jobfile/takeIn') // not needed before somebody shares
    const { showNewJob } = this.parts
    return takeIn(files, {
      ...this.parts,
      signal,
      show: (opening) => this.show(opening),
      showNewJob: (job) => showNewJob(job, 'secondear'),
    })
  }

  /** @param gather `null`: nothing of it is left to be opened. */
  private open(target: Target, gather: (signal: AbortSignal) => Promise<Source | null>): Promise<void> {
    return this.guarded(target, async (signal) => {
      const source = await gather(signal)
      if (source === null) return this.show(null)
      const root = sweepRoot(source)
      if (target.kind === 'sweep' && root.sheet === null && this.parts.joiner.offer(source, target.lineId)) {
        return this.show(null)
      }
      const asking = { source, root, target }
      const read = await this.read(asking, null, signal)
      if (read.needsLayout) this.ask(asking, read)
      else await this.keep(asking, read, signal)
    })
  }

  /** Runs one opening and tells what went wrong at the place where it was asked for. */
  private async guarded(target: Target, run: (signal: AbortSignal) => Promise<void>): Promise<void> {
    this.cancel()
    const running = new AbortController()
    this.running = running
    const place: NoticePlace = target.kind === 'job' ? 'jobs' : 'line'
    this.parts.store.update((state) => untell(state, place))
    try {
      await run(running.signal)
    } catch (error) {
      if (isAborted(error) || running.signal.aborted) return
      this.show(null)
      this.parts.store.update((state) => tell(state, place, 'wrong', troubleOf(error)))
    }
  }

  /** One zip is unpacked; all else is taken as it is. */
  private async unpacked(source: Source, signal: AbortSignal): Promise<Source> {
    const [only] = source.files
    if (source.files.length !== 1 || !(only?.bytes instanceof File) || !isZip(only.bytes)) return source
    const name = only.bytes.name.replace(/\.zip$/i, '')
    const files: SourceFile[] = []
    this.show({ stage: 'unpacking', name, done: 0, total: 0 })
    await this.parts.analyst.call(
      'unzip',
      { zip: only.bytes, name: only.bytes.name },
      { signal, onPart: ({ path, bytes }) => files.push({ path, bytes: new Blob([bytes]) }) },
    )
    return { name, files }
  }

  private async read({ source, root }: Asking, layout: ToldLayout | null, signal: AbortSignal): Promise<ReadFolder> {
    this.show({ stage: 'reading', name: source.name, done: 0, total: 1 })
    const [sheet, line] = await Promise.all([textOf(root.sheet, 'sweep.csv'), textOf(root.line, 'line.json')])
    const texts = { folder: printable(source.name), paths: [...root.files.keys()], sheet, line, layout }
    const transfer = [sheet, line].flatMap((buffer) => buffer ?? [])
    return this.parts.analyst.call('readFolder', texts, { signal, transfer })
  }

  private ask(asking: Asking, read: ReadFolder): void {
    this.asking = asking
    this.show({
      stage: 'asking',
      name: asking.source.name,
      clipCount: read.rows.length,
      points: [...new Set(read.rows.map((row) => row.point))],
      leftOut: read.sheetProblems.map((problem) => String(problem.values.file)),
    })
  }

  private async keep({ source, root, target }: Asking, read: ReadFolder, signal: AbortSignal): Promise<void> {
    const { store, database } = this.parts
    const into = target.kind === 'sweep' ? store.get().job?.lines.find((line) => line.id === target.lineId) : undefined
    const sweeps = await keepFolder(read.rows, root.files, read.sheetProblems, {
      database,
      signal,
      onDone: (done, total) => this.show({ stage: 'keeping', name: source.name, done, total }),
      takenNames: into?.sweeps.map((sweep) => sweep.name) ?? [],
    })
    signal.throwIfAborted()
    this.asking = null
    await this.put(source.name, target, read, sweeps)
    this.show(null)
  }

  private async put(name: string, target: Target, read: ReadFolder, sweeps: readonly JobSweep[]): Promise<void> {
    const { store, nowS, showNewJob, showLine } = this.parts
    if (target.kind === 'sweep') {
      store.dispatch(addSweeps, { lineId: target.lineId, sweeps })
      if (read.line !== null)
        store.update((state) => tell(state, 'line', 'odd', { key: 'line_json_not_used', values: {} }))
      return
    }
    const line = newLine(lineName(store.get().job?.lines.length ?? 0, target), read, sweeps)
    if (target.kind === 'line') {
      store.dispatch(addLine, line)
      showLine(line.id)
      return
    }
    const now = nowS()
    const taken = new Set((store.get().session.jobs ?? []).map((job) => job.name))
    const job: Job = {
      id: newId(),
      name: freeName(name.slice(0, MOST_NAME - 5), taken),
      createdS: now,
      changedS: now,
      lines: [line],
    }
    await showNewJob(job, 'place')
  }

  private show(opening: Opening | null): void {
    this.parts.store.update((state) => withSession(state, { opening }))
  }
}

const MOST_NAME = 200 // as the job's reader allows
const MOST_TEXT_BYTES = 32e6

function lineName(lineCount: number, target: Target): string {
  return sentence('label_line_number', { number: target.kind === 'job' ? 1 : lineCount + 1 })
}

function newLine(name: string, read: ReadFolder, sweeps: readonly JobSweep[]): JobLine {
  const line = read.line ?? readLineJson({}, 'line.json').line
  return { id: newId(), name, line, problems: read.lineProblems, sweeps, confirmations: [] }
}

async function textOf(file: Blob | null, name: string): Promise<ArrayBuffer | null> {
  if (file === null) return null
  if (file.size > MOST_TEXT_BYTES) {
    throw new FormatError(name, '', `is larger than ${MOST_TEXT_BYTES / 1e6} MB; a sheet is not that large`)
  }
  return file.arrayBuffer()
}

/** What went wrong, in words. A wrong file brings its own. */
function troubleOf(error: unknown): Keyed {
  if (error instanceof FormatError) return { key: 'file_wrong', values: { why: error.message } }
  if (isFull(error)) return { key: 'device_full', values: {} }
  return { key: 'open_failed', values: { why: error instanceof Error ? error.message : String(error) } }
}
