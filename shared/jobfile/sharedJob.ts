import type { Job, JobClip, JobLine } from '../job/job'
import type { Mend } from '../job/mend'
import type { PressureTest } from '../job/pressureTests'

/** What of a job is shared. */
export interface ShareChoice {
  /** Numbers of the points whose clips go along; `null` for all. */
  readonly points: ReadonlySet<number> | null
  /** Names, free texts and photos stay here. */
  readonly withoutCustomer: boolean
  /** Clips go as FLAC where that is smaller: the same sound, and the same file once it is opened. Not there: as WAV. */
  readonly asFlac?: boolean
}

export const SHARE_ALL: ShareChoice = { points: null, withoutCustomer: false }

/**
 * The job as it is shared. Its ids stay, so that what comes back finds its place.
 *
 * Without the customer, everything somebody typed freely is empty: names of the job, its lines and their ends, what the
 * customer said, notes, columns of the sheet that this program does not know, the microphone's name, which may be a
 * person's; and there are no photos. Names of files and of sweeps, numbers and choices stay.
 */
export function sharedJob(job: Job, { points, withoutCustomer }: ShareChoice): Job {
  const some = points === null ? job : { ...job, lines: job.lines.map((line) => withPoints(line, points)) }
  if (!withoutCustomer) return some
  // What copies tell differently may be a name; opinions are signed as they are, and are the office's own words.
  const { keptApart: _, ...rest } = some
  return { ...rest, name: '', lines: some.lines.map(withoutNames) }
}

function withPoints({ removedClips: _, ...line }: JobLine, points: ReadonlySet<number>): JobLine {
  const sweeps = line.sweeps.map((sweep) => ({
    ...sweep,
    clips: sweep.clips.filter(({ row }) => points.has(row.point)),
  }))
  return { ...line, sweeps: sweeps.filter(({ clips }) => clips.length > 0) }
}

function withoutNames(line: JobLine): JobLine {
  const { complaint, site, signs, found, mend, removedClips, pressureTests, digging } = line
  return {
    ...line,
    name: '',
    // That it was invented is nobody's secret, and must not get lost.
    line: { ...line.line, unknown: line.line.unknown.invented === true ? { invented: true } : {} },
    sweeps: line.sweeps.map((sweep) => ({ ...sweep, clips: sweep.clips.map(plainClip) })),
    confirmations: line.confirmations.map((said) => ({ ...said, note: '' })),
    ...(complaint && { complaint: { ...complaint, said: '', isolation: '' } }),
    ...(site && { site: { ...site, startName: '', endName: '', photo: null } }),
    ...(signs && { signs: signs.map((sign) => ({ ...sign, note: '' })) }),
    ...(found && { found: found.map((each) => ({ ...each, note: '', photo: null })) }),
    ...(mend && { mend: plainMend(mend) }),
    ...(digging && { digging: { ...digging, marks: digging.marks.map((mark) => ({ ...mark, name: '' })) } }),
    ...(removedClips && { removedClips: removedClips.map(plainClip) }),
    ...(pressureTests && { pressureTests: pressureTests.map(plainTest) }),
  }
}

function plainClip(clip: JobClip): JobClip {
  const { recording } = clip
  return {
    ...clip,
    row: { ...clip.row, note: '', unknown: {} },
    ...(recording && { recording: { ...recording, device: '' } }),
  }
}

function plainTest(test: PressureTest): PressureTest {
  const { kept } = test
  return {
    ...test,
    name: '',
    readings: test.readings.map((reading) => ({ ...reading, note: '' })),
    fittings: test.fittings.map((fitting) => ({ ...fitting, name: '' })),
    kept: kept && { ...kept, ...(kept.judged && { judged: { ...kept.judged, reasons: plainReasons(test) } }) },
  }
}

/** Reasons of a kept verdict name fittings as somebody called them. */
function plainReasons({ kept, fittings }: PressureTest) {
  const names = fittings.map(({ name }) => name).filter((name) => name !== '')
  const plain = (value: number | string) =>
    typeof value === 'string' && names.some((name) => value.includes(name)) ? '' : value
  return (kept?.judged?.reasons ?? []).map(({ key, values }) => ({
    key,
    values: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, plain(value)])),
  }))
}

function plainMend(mend: Mend): Mend {
  return {
    ...mend,
    parts: mend.parts.map((part) => ({ ...part, name: '' })),
    steps: mend.steps.map((step) => ({ ...step, text: '' })),
  }
}
