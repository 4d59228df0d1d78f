import { createHash } from 'node:crypto'
import type { Job, JobClip } from '../../shared/job/job'
import type { ByteSource } from '../../shared/jobfile/byteSource'
import { type JobFileParts, planJobFile } from '../../shared/jobfile/planJobFile'
import { SHARE_ALL, type ShareChoice } from '../../shared/jobfile/sharedJob'
import { writeJobFile } from '../../shared/jobfile/writeJobFile'
import { FIRST_LINE } from './recordedJob'
import { noiseClip } from './runCli'

/** Sounds and photos beside a job, by digest. */
export type Beside = Map<string, Uint8Array>

export const digest = async (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

export function keptIn(beside: Beside, bytes: Uint8Array) {
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  beside.set(sha256, Uint8Array.from(bytes)) // not a Buffer, so that tests can compare
  return { sha256, bytes: bytes.length }
}

export function clipOf(beside: Beside, point: number, air: 'on' | 'off', bytes: Uint8Array, file?: string): JobClip {
  return {
    row: {
      point,
      alongM: point * 1.5,
      file: file ?? `${String(point).padStart(2, '0')}-${air}.wav`,
      air,
      take: 1,
      sharedTake: true,
      sweep: '1',
      offsetM: 0,
      timeS: 1_790_000_000 + 60 * point,
      contact: 'spike',
      airKpa: null,
      note: '',
      unknown: {},
    },
    sound: keptIn(beside, bytes),
    problems: [],
  }
}

/** One pixel, as PNG. */
export const PIXEL = Uint8Array.from(
  Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  ),
)

/** A job of three points with the air on and off, a clip that is no WAV, and a photo of what was found. */
export function smallJob(): { readonly job: Job; readonly beside: Beside } {
  const beside: Beside = new Map()
  const clips = [1, 2, 3].flatMap((point) => [
    clipOf(beside, point, 'on', noiseClip(0.3, 0.1 * point)),
    clipOf(beside, point, 'off', noiseClip(0.25, 0.01 * point)),
  ])
  clips.push(clipOf(beside, 4, 'on', new TextEncoder().encode('OggS, but not really'), 'four.OGG'))
  const job: Job = {
    id: 'job-one',
    name: 'Alder Square, fountain',
    createdS: 1_790_000_000,
    changedS: 1_790_003_600,
    lines: [
      {
        ...FIRST_LINE,
        sweeps: [{ id: 'sweep-1', name: '1', clips, problems: [] }],
        found: [
          {
            id: 'found-1',
            timeS: 1_790_003_000,
            way: 'opened',
            alongM: 3.1,
            cause: 'root',
            note: 'under the hedge',
            photo: keptIn(beside, PIXEL),
            shown: null,
          },
        ],
      },
    ],
  }
  return { job, beside }
}

export function partsFor(beside: Beside): JobFileParts {
  return {
    digest,
    load: async (sha256) => beside.get(sha256) ?? null,
    rings: async () => [
      { timeS: 0.1, pitchHz: 812, decayS: 0.01, tonality: 0.9, strengthDb: 12 },
      { timeS: 0.05, pitchHz: 640, decayS: 0.01, tonality: 0.9, strengthDb: 12 },
    ],
    onDone: () => undefined,
  }
}

/** The job file of a job as one array. */
export async function packed(job: Job, beside: Beside, choice: ShareChoice = SHARE_ALL): Promise<Uint8Array> {
  const plan = await planJobFile(job, choice, partsFor(beside))
  const pieces: Uint8Array[] = []
  for await (const piece of writeJobFile(plan, () => undefined)) pieces.push(piece)
  const bytes = Uint8Array.from(Buffer.concat(pieces))
  if (bytes.length !== plan.bytes) throw new Error(`the plan says ${plan.bytes} bytes, and there are ${bytes.length}`)
  return bytes
}

export function sourceOf(bytes: Uint8Array): ByteSource {
  return {
    size: bytes.length,
    read: async (from, to) => {
      if (!(from >= 0 && from <= to && to <= bytes.length)) throw new Error(`read outside the file: ${from} to ${to}`)
      return bytes.slice(from, to)
    },
  }
}
