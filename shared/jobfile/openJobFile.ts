import { plainClips } from '../audio/plainClips'
import { decodeText } from '../base/decodeText'
import { FormatError } from '../base/errors'
import type { Problem } from '../base/problem'
import { printable, shown } from '../base/shown'
import { utf8Bytes } from '../base/utf8Bytes'
import { wavOfFlac } from '../flac/flacClip'
import { digestsOf } from '../job/digestsOf'
import type { Job } from '../job/job'
import { readJob } from '../job/readJob'
import type { ByteSource } from './byteSource'
import { pictureKind } from './pictureKind'
import { JOB_FILE_VERSION } from './planJobFile'
import { type Bag, type Digest, readBag } from './readBag'

/** Bytes out of a job file, under the digest by which the job names them. */
export interface OpenedBytes {
  readonly sha256: string
  readonly bytes: Uint8Array
}

export interface OpeningParts {
  readonly digest: Digest
  /** Gets each sound and photo as it came before it was packed; the next is read when it is done. */
  readonly keep: (file: OpenedBytes) => Promise<void>
  readonly onDone: (done: number, total: number) => void
}

/** A job file that was opened, as far as it could be. */
export interface OpenedJobFile {
  readonly job: Job
  /** What is damaged, missing or left out. The rest is in the job. */
  readonly problems: readonly Problem[]
  /** Numbers of the points that were shared; `null`: all. */
  readonly points: readonly number[] | null
  readonly withoutCustomer: boolean
}

const JOB = 'data/job.json'
/** Chosen: a job of thousands of clips is 5 MB. */
const MOST_JOB_BYTES = 32e6

/**
 * Opens a job file that nobody vouches for. Every digest is checked; what is damaged, extra or hostile is named and left
 * out, and the rest opens. Memory: one file of it at a time.
 *
 * @param name For messages.
 * @throws {FormatError} no job file; of a newer version; the job itself is damaged. One line with the mend.
 */
export async function openJobFile(source: ByteSource, name: string, parts: OpeningParts): Promise<OpenedJobFile> {
  const bag = await readBag(source, printable(name), parts.digest)
  checkVersion(bag, name)
  if (!bag.payload.includes(JOB)) {
    throw new FormatError(printable(name), '', `${JOB} is missing or damaged in it; ask for the file again`)
  }
  const text = await bag.read(JOB)
  if (text.length > MOST_JOB_BYTES) throw new FormatError(printable(name), JOB, 'is far too large for a job')
  const job = readJob(decodeText(text, JOB), `${printable(name)}, ${JOB}`)
  const problems = [...bag.problems, ...(await unpack(bag, job, parts))]
  const points = bag.info.get('yardhark-points') ?? 'all'
  return {
    job,
    problems,
    points: points === 'all' ? null : points.split(' ').map(Number).filter(Number.isInteger),
    withoutCustomer: bag.info.get('yardhark-customer') === 'left out',
  }
}

function checkVersion({ info }: Bag, name: string): void {
  const version = info.get('yardhark-job-file')
  const isNumber = version !== undefined && /^\d{1,9}$/.test(version)
  if (version === undefined || (isNumber && Number(version) >= 1 && Number(version) <= JOB_FILE_VERSION)) return
  const isNewer = isNumber && Number(version) > JOB_FILE_VERSION
  const mend = isNewer
    ? 'from a newer version of the program; open it there, or update this one'
    : 'which is no version'
  throw new FormatError(printable(name), 'bag-info.txt', `says that it is of format ${shown(version)}, ${mend}`)
}

async function unpack(bag: Bag, job: Job, { digest, keep, onDone }: OpeningParts): Promise<Problem[]> {
  const { sounds, photos } = digestsOf(job)
  const wanted = new Set([...sounds.map(({ sha256 }) => sha256), ...photos])
  const kept = new Set<string>()
  const problems: Problem[] = []
  const files = bag.payload.filter((path) => path !== JOB)
  for (const [done, path] of files.entries()) {
    onDone(done, files.length)
    const found = await wantedBytes(bag, path, wanted, digest)
    if ('problem' in found) problems.push(found.problem)
    else if (photos.includes(found.sha256) && pictureKind(found.bytes) === null) {
      problems.push({ key: 'bag_photo_odd', severity: 'weak', values: { file: printable(path) } })
    } else {
      await keep(found)
      kept.add(found.sha256)
    }
  }
  return [...problems, ...lostClips(job, kept)]
}

/** Of a clip that came as Broadcast Wave, or that as FLAC: the bytes it was made of. */
async function wantedBytes(
  bag: Bag,
  path: string,
  wanted: ReadonlySet<string>,
  digest: Digest,
): Promise<OpenedBytes | { readonly problem: Problem }> {
  const file = printable(path)
  try {
    for (const bytes of candidates(await bag.read(path))) {
      const sha256 = await digest(bytes)
      if (wanted.has(sha256)) return { sha256, bytes }
    }
    return { problem: { key: 'bag_file_stray', severity: 'note', values: { file } } }
  } catch (error) {
    if (!(error instanceof FormatError)) throw error
    return { problem: { key: 'bag_file_damaged', severity: 'weak', values: { file, why: error.mend } } }
  }
}

/** What the bytes may have been before they were packed; themselves among them. */
function* candidates(bytes: Uint8Array): Generator<Uint8Array> {
  yield* plainClips(bytes)
  if (!FLAC.every((byte, i) => bytes[i] === byte)) return
  const wav = wavOfFlac(bytes)
  if (wav !== null) yield* plainClips(wav)
}

const FLAC = utf8Bytes('fLaC')

/** Clips whose sound the job names and the file does not hold; each once. */
function lostClips(job: Job, kept: ReadonlySet<string>): Problem[] {
  const clips = job.lines.flatMap((line) => line.sweeps.flatMap((sweep) => sweep.clips))
  const lost = clips.filter(({ sound }) => sound !== null && !kept.has(sound.sha256))
  const files = [...new Set(lost.map(({ row }) => row.file))]
  const [first, ...others] = files
  if (first === undefined) return []
  if (others.length === 0) return [{ key: 'bag_clip_lost', severity: 'weak', values: { file: printable(first) } }]
  return [{ key: 'bag_clips_lost', severity: 'weak', values: { file: printable(first), count: others.length } }]
}
