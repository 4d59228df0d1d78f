import { writeLineJson } from '../line/writeLineJson'
import type { PhoneAccount } from '../sweep/phoneAccount'
import { phoneProblems } from '../sweep/phoneProblems'
import type { SweepRow } from '../sweep/sweep'
import { writeSweepCsv } from '../sweep/writeSweepCsv'
import type { JobLine, KeptSound } from './job'
import { phoneAccountOf } from './phoneAccountOf'
import type { Recording } from './recording'

/** What a sweep folder of a line holds. */
export interface SweepFolder {
  /** The text of its `sweep.csv`. */
  readonly sheet: string
  /** The text of its `line.json`. */
  readonly line: string
  /** Sounds by path, each path once, in the order of the rows. Clips without a sound are named by the sheet only. */
  readonly files: readonly { readonly path: string; readonly sound: KeptSound }[]
}

/**
 * A line with all its sweeps as a sweep folder: `locate` says of the folder what it says of the line, also where the
 * phone's own account makes a clip weak.
 *
 * A sheet has a take column for all of its rows or for none. Where clips of one take share a setting-down beside others
 * that do not, each of the others gets a take of its own. Clips of one name that are not the same get names of their own,
 * also where names differ in case only, which some disks do not tell apart.
 *
 * @returns `null` for a line without a clip: a sheet needs a row.
 */
export function sweepFolder({ line, sweeps }: Pick<JobLine, 'line' | 'sweeps'>): SweepFolder | null {
  const clips = sweeps.flatMap((sweep) => sweep.clips)
  if (clips.length === 0) return null
  const names = new FileNames()
  const files = new Map<string, KeptSound>()
  const named = clips.map(({ row, sound, recording }) => {
    const path = names.nameOf(row.file, sound?.sha256 ?? null)
    if (sound !== null) files.set(path, sound)
    const phone = recording === undefined ? row.phone : againstIt(recording)
    return { ...row, file: path, ...(phone && { phone }) }
  })
  return {
    sheet: writeSweepCsv(withTakes(named)),
    line: writeLineJson(line),
    files: [...files].map(([path, sound]) => ({ path, sound })),
  }
}

/** Nothing where nothing is to be said: a sheet of good clips is not littered with it. */
function againstIt(recording: Recording): PhoneAccount | undefined {
  const account = phoneAccountOf(recording)
  return phoneProblems(account).length === 0 ? undefined : account
}

function withTakes(rows: readonly SweepRow[]): SweepRow[] {
  const keyOf = ({ point, sweep, air }: SweepRow) => JSON.stringify([point, sweep, air])
  const isPlain = rows.every((row) => !row.sharedTake) && new Set(rows.map(keyOf)).size === rows.length
  if (isPlain) return [...rows]
  const placeOf = ({ point, sweep }: SweepRow, take: number) => JSON.stringify([point, sweep, take])
  const taken = new Set(rows.filter((row) => row.sharedTake).map((row) => placeOf(row, row.take)))
  return rows.map((row) => {
    if (row.sharedTake) return row
    let { take } = row
    while (taken.has(placeOf(row, take))) take++
    taken.add(placeOf(row, take))
    return { ...row, take, sharedTake: true }
  })
}

/** Gives each sound a path that no other has, the one it is known by where that is free. */
class FileNames {
  private readonly files = new Map<string, string>([
    ['sweep.csv', ''],
    ['line.json', ''],
  ])
  private readonly folders = new Set<string>()

  /** @param content Tells sounds apart; `null` for one that is not there. */
  nameOf(wanted: string, content: string | null): string {
    for (let copy = 1; ; copy++) {
      const path = copy === 1 ? wanted : this.isUnderFile(wanted) ? `clips-${copy}/${wanted}` : numbered(wanted, copy)
      if (this.take(path, content ?? `nothing ${path}`)) return path
    }
  }

  private take(path: string, content: string): boolean {
    const key = path.toLowerCase()
    const holder = this.files.get(key)
    if (holder !== undefined) return holder === content
    if (this.folders.has(key) || this.isUnderFile(path)) return false
    this.files.set(key, content)
    for (const folder of foldersAbove(key)) this.folders.add(folder)
    return true
  }

  /** A file of that name is where a folder would have to be. */
  private isUnderFile(path: string): boolean {
    return foldersAbove(path.toLowerCase()).some((folder) => this.files.has(folder))
  }
}

function foldersAbove(path: string): string[] {
  const steps = path.split('/').slice(0, -1)
  return steps.map((_, i) => steps.slice(0, i + 1).join('/'))
}

/** `06-on-2.wav` */
function numbered(path: string, copy: number): string {
  const [, stem, ending = ''] = /^(.*?)(\.[^./]*)?$/s.exec(path)!
  return `${stem}-${copy}${ending}`
}
