import { deflateSync } from 'fflate'
import { broadcastClip } from '../audio/broadcastClip'
import type { Problem } from '../base/problem'
import { printable } from '../base/shown'
import { utf8Bytes } from '../base/utf8Bytes'
import type { Ring } from '../bubbles/ring'
import { flacOf } from '../flac/flacClip'
import { digestsOf } from '../job/digestsOf'
import type { Job, JobClip } from '../job/job'
import { jobJson } from '../job/jobJson'
import { BAG_DECLARATION, bagInfoText, MANIFEST, manifestText, TAG_MANIFEST } from './bagTexts'
import { clipNotes, ringMarks } from './clipNotes'
import { crc32 } from './crc32'
import { pictureKind } from './pictureKind'
import type { Digest } from './readBag'
import { type ShareChoice, sharedJob } from './sharedJob'
import { utcTimes } from './utcTimes'
import { type ZippedFile, zipBytes } from './zipWriting'

/** What the shells bring to packing. */
export interface JobFileParts {
  readonly digest: Digest
  /** Bytes of a sound or photo as they came; `null` when they are not here. Asked for twice. */
  readonly load: (sha256: string) => Promise<Uint8Array | null>
  /** Rings of a clip, found again or remembered; none for what cannot be read. */
  readonly rings: (sha256: string, bytes: Uint8Array) => Promise<readonly Ring[]>
  readonly onDone: (done: number, total: number) => void
}

export interface PlannedFile {
  readonly zipped: ZippedFile
  /** Its bytes as they stand in the zip. */
  readonly bytes: () => Promise<Uint8Array>
}

/** A job file before it is written: its size is known to the byte. */
export interface JobFilePlan {
  /** Of the folder in it; the file is called so with `.zip` behind it. */
  readonly name: string
  readonly bytes: number
  readonly files: readonly PlannedFile[]
  /** Clips whose sound is not here. */
  readonly problems: readonly Problem[]
}

/** Goes up with every change that an older program could not read; 2: clips as FLAC. A file says the least that reads it. */
export const JOB_FILE_VERSION = 2

/**
 * Plans the job file of a job: FORMAT.md of shared/job says what is in it. The same job, choice and rings give the same
 * bytes, wherever they are packed.
 *
 * One clip is held at a time; writing loads each again.
 */
export async function planJobFile(job: Job, choice: ShareChoice, parts: JobFileParts): Promise<JobFilePlan> {
  const shared = sharedJob(job, choice)
  const base = fileName(shared)
  const { sounds, photos } = digestsOf(shared)
  const clips = clipsBySound(shared)
  const total = sounds.length + photos.length
  const payload: PayloadFile[] = [await textFile('data/job.json', jobText(shared), parts.digest, true)]
  const problems: Problem[] = []
  for (const [done, { sha256 }] of sounds.entries()) {
    parts.onDone(done, total)
    const clip = clips.get(sha256)!
    const planned = await clipFile(clip, sha256, parts, choice.asFlac === true)
    if (planned !== null) payload.push(planned)
    else problems.push({ key: 'bag_clip_lost', severity: 'weak', values: { file: printable(clip.row.file) } })
  }
  for (const [done, sha256] of photos.entries()) {
    parts.onDone(sounds.length + done, total)
    const planned = await photoFile(sha256, parts)
    if (planned !== null) payload.push(planned)
  }
  const [text, ...others] = payload
  others.sort((a, b) => (a.path < b.path ? -1 : 1))
  const tags = await tagFiles(shared, choice, [text!, ...others], parts.digest)
  const files = [...tags, text!, ...others].map(({ path, ...file }) => ({
    zipped: { ...file.zipped, path: `${base}/${path}` },
    bytes: file.bytes,
  }))
  return { name: base, bytes: zipBytes(files.map(({ zipped }) => zipped)), files, problems }
}

interface PayloadFile extends PlannedFile {
  readonly path: string
  /** Of the bytes unpacked. */
  readonly sha256: string
}

function clipsBySound(job: Job): ReadonlyMap<string, JobClip> {
  const clips = new Map<string, JobClip>()
  for (const line of job.lines) {
    for (const clip of [...line.sweeps.flatMap((sweep) => sweep.clips), ...(line.removedClips ?? [])]) {
      if (clip.sound !== null && !clips.has(clip.sound.sha256)) clips.set(clip.sound.sha256, clip)
    }
  }
  return clips
}

/** As Broadcast Wave where it can be taken apart again, else as it came. */
async function clipFile(
  clip: JobClip,
  sha256: string,
  parts: JobFileParts,
  asFlac: boolean,
): Promise<PayloadFile | null> {
  const asItCame = await parts.load(sha256)
  if (asItCame === null) return null
  const marks = ringMarks(await parts.rings(sha256, asItCame))
  const made = (bytes: Uint8Array) => madeClip(bytes, broadcastClip(bytes, clipNotes(clip), marks), asFlac)
  const { bytes, kind } = made(asItCame)
  const { point, air, file } = clip.row
  const number = point < 0 ? String(point) : String(point).padStart(2, '0')
  const ending = kind === 'as it came' ? (/\.[a-z0-9]{1,5}$/i.exec(file)?.[0].toLowerCase() ?? '.wav') : `.${kind}`
  const path = `data/clips/${number}-${air}-${sha256.slice(0, 16)}${ending}`
  return storedFile(path, bytes, parts.digest, async () => {
    const again = await parts.load(sha256)
    return again === null ? null : made(again).bytes
  })
}

interface MadeClip {
  readonly bytes: Uint8Array
  readonly kind: 'flac' | 'wav' | 'as it came'
}

function madeClip(asItCame: Uint8Array, broadcast: Uint8Array | null, asFlac: boolean): MadeClip {
  const wav = broadcast ?? asItCame
  const flac = asFlac ? flacOf(wav) : null
  if (flac !== null && flac.length < wav.length) return { bytes: flac, kind: 'flac' }
  return { bytes: wav, kind: broadcast === null ? 'as it came' : 'wav' }
}

async function photoFile(sha256: string, parts: JobFileParts): Promise<PayloadFile | null> {
  const bytes = await parts.load(sha256)
  if (bytes === null) return null
  const path = `data/photos/${sha256.slice(0, 16)}.${pictureKind(bytes) ?? 'bin'}`
  return storedFile(path, bytes, parts.digest, () => parts.load(sha256))
}

async function storedFile(
  path: string,
  bytes: Uint8Array,
  digest: Digest,
  again: () => Promise<Uint8Array | null>,
): Promise<PayloadFile> {
  const crc = crc32(bytes)
  const zipped = { path, crc, bytes: bytes.length, packedBytes: bytes.length, deflated: false }
  const load = async () => {
    const loaded = await again()
    if (loaded !== null && loaded.length === zipped.bytes && crc32(loaded) === crc) return loaded
    throw new Error(`${path} changed while it was packed`)
  }
  return { path, sha256: await digest(bytes), zipped, bytes: load }
}

async function textFile(path: string, text: string, digest: Digest, deflated = false): Promise<PayloadFile> {
  const bytes = utf8Bytes(text)
  const packed = deflated ? deflateSync(bytes, { level: 6 }) : bytes
  const zipped = { path, crc: crc32(bytes), bytes: bytes.length, packedBytes: packed.length, deflated }
  return { path, sha256: await digest(bytes), zipped, bytes: async () => packed }
}

/** `bagit.txt`, `bag-info.txt` and the two manifests, in the order in which they stand at the head of the zip. */
async function tagFiles(
  job: Job,
  choice: ShareChoice,
  payload: readonly PayloadFile[],
  digest: Digest,
): Promise<PayloadFile[]> {
  const bytes = payload.reduce((sum, { zipped }) => sum + zipped.bytes, 0)
  const declaration = await textFile('bagit.txt', BAG_DECLARATION, digest)
  const info = await textFile(
    'bag-info.txt',
    bagInfoText([
      ['Bagging-Date', utcTimes(job.changedS)?.date ?? '1970-01-01'],
      ['Payload-Oxum', `${bytes}.${payload.length}`],
      ['External-Identifier', job.id],
      ['Yardhark-Job-File', choice.asFlac === true ? String(JOB_FILE_VERSION) : '1'],
      ['Yardhark-Points', choice.points === null ? 'all' : [...choice.points].sort((a, b) => a - b).join(' ')],
      ['Yardhark-Customer', choice.withoutCustomer ? 'left out' : 'as told'],
    ]),
    digest,
  )
  const manifest = await textFile(MANIFEST, manifestText(payload), digest)
  const tagManifest = await textFile(TAG_MANIFEST, manifestText([info, declaration, manifest]), digest)
  return [declaration, info, manifest, tagManifest]
}

function jobText(job: Job): string {
  return `${JSON.stringify(jobJson(job), null, 1)}\n`
}

/** Plain letters, digits and hyphens, for every disk and every zip. */
function fileName({ name, id }: Job): string {
  const plain = name
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
  return plain === '' ? `job-${id.replace(/\W+/g, '-').slice(0, 8)}` : plain
}
