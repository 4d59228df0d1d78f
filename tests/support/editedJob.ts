import fc from 'fast-check'
import type { Job, JobClip, JobLine } from '../../shared/job/job'
import type { Opinion } from '../../shared/job/opinions'
import { freshPressureTest } from '../../shared/job/pressureTests'
import { smallJob } from './packedJob'

/** An opinion of nobody in particular. */
export function opinionOf(id: string, told: Partial<Opinion> = {}): Opinion {
  return {
    id,
    jobId: 'job-one',
    lineId: 'line',
    timeS: 1_790_010_000,
    reviewer: 'office',
    says: 'here',
    alongM: 3.2,
    windowM: [2.8, 3.6],
    confidence: 0.8,
    again: [],
    note: '',
    comments: [],
    seen: { answer: false, opinions: false, shuffled: true, heard: [] },
    version: 'test',
    deviceKey: null,
    signature: null,
    ...told,
  }
}

/** Job of the tests with a pressure test and a sign, which edits work on. */
export const BASE_JOB: Job = {
  ...smallJob().job,
  lines: smallJob().job.lines.map((line) => ({
    ...line,
    signs: [{ id: 'sign-0', kind: 'wet patch', alongM: 2, offsetM: 0, note: '' }],
    pressureTests: [{ ...freshPressureTest({ id: 'test-0', createdS: 1_790_000_100, unit: 'kPa' }), readings: [] }],
  })),
}

type Edit = (job: Job) => Job

const onLine = (change: (line: JobLine) => JobLine): Edit => {
  return (job) => ({ ...job, lines: job.lines.map((line, i) => (i === 0 ? change(line) : line)) })
}

const word = fc.constantFrom('a', 'b', 'c', '')
const number = fc.integer({ min: 1, max: 4 })

/** One edit as somebody makes it on a device. */
export const anEdit: fc.Arbitrary<Edit> = fc.oneof(
  word.map(
    (name): Edit =>
      (job) => ({ ...job, name }),
  ),
  number.map(
    (n): Edit =>
      (job) => ({ ...job, changedS: job.changedS + n }),
  ),
  word.map((name) => onLine((line) => ({ ...line, name }))),
  number.map((n) => onLine((line) => ({ ...line, line: { ...line.line, depthM: n / 4 } }))),
  fc.tuple(number, word).map(([n, note]) =>
    onLine((line) => ({
      ...line,
      signs: [
        ...(line.signs ?? []).filter(({ id }) => id !== `sign-${n}`),
        { id: `sign-${n}`, kind: 'other', alongM: n, offsetM: 0, note },
      ],
    })),
  ),
  fc.tuple(number, word).map(([n, note]) => onLine((line) => withClips(line, (clips) => withNote(clips, n, note)))),
  number.map((n) => onLine((line) => withClips(line, (clips) => [...clips, anotherClip(line, n)]))),
  number.map((n) => onLine((line) => takenOut(line, n))),
  number.map((n) =>
    onLine((line) => ({
      ...line,
      pressureTests: (line.pressureTests ?? []).map((test) => ({
        ...test,
        readings: [
          ...test.readings,
          {
            id: `r-${test.readings.length}`,
            timeS: 60 * test.readings.length,
            value: 200 + n,
            note: '',
            leftOut: false,
          },
        ],
      })),
    })),
  ),
  word.map((said) =>
    onLine((line) => ({ ...line, complaint: { said, ruledOut: ['pump'], isolation: '', waterPasses: null } })),
  ),
  fc.tuple(number, word).map(
    ([n, note]): Edit =>
      (job) => ({ ...job, opinions: [...(job.opinions ?? []), opinionOf(`o-${n}`, { note })] }),
  ),
  number.map(
    (n): Edit =>
      (job) =>
        job.lines.some(({ id }) => id === `line-${n}`)
          ? job
          : { ...job, lines: [...job.lines, { ...job.lines[0]!, id: `line-${n}`, name: `Line ${n}` }] },
  ),
)

function withClips(line: JobLine, change: (clips: readonly JobClip[]) => readonly JobClip[]): JobLine {
  return { ...line, sweeps: line.sweeps.map((sweep) => ({ ...sweep, clips: change(sweep.clips) })) }
}

function withNote(clips: readonly JobClip[], at: number, note: string): JobClip[] {
  return clips.map((clip, i) => (i === at ? { ...clip, row: { ...clip.row, note } } : clip))
}

function anotherClip(line: JobLine, n: number): JobClip {
  const count = line.sweeps[0]!.clips.length + (line.removedClips?.length ?? 0)
  const first = line.sweeps[0]?.clips[0] ?? line.removedClips![0]!
  const sha256 = String(n).repeat(60) + String(1000 + count)
  return { ...first, row: { ...first.row, file: `more-${n}-${count}.wav` }, sound: { sha256, bytes: 10 } }
}

function takenOut(line: JobLine, at: number): JobLine {
  const clip = line.sweeps[0]!.clips[at]
  if (clip === undefined) return line
  const left = withClips(line, (clips) => clips.filter((each) => each !== clip))
  return { ...left, removedClips: [...(line.removedClips ?? []), clip] }
}

/** A copy of the job that somebody worked on for a while. */
export const anEditedJob: fc.Arbitrary<Job> = fc
  .array(anEdit, { maxLength: 8 })
  .map((edits) => edits.reduce((job, edit) => edit(job), BASE_JOB))
