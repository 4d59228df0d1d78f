import '../../shared/words/speakAll'
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { readWav } from '../../shared/audio/readWav'
import { writeWav } from '../../shared/audio/writeWav'
import { decodeText } from '../../shared/base/decodeText'
import { FormatError } from '../../shared/base/errors'
import { parseJson } from '../../shared/base/parseJson'
import { Random } from '../../shared/base/random'
import { utf8Bytes } from '../../shared/base/utf8Bytes'
import { clipEvidence } from '../../shared/evidence/clipEvidence'
import { flacOf, wavOfFlac } from '../../shared/flac/flacClip'
import { jobJson } from '../../shared/job/jobJson'
import { opinionJson } from '../../shared/job/opinionJson'
import { openJobFile } from '../../shared/jobfile/openJobFile'
import { readModel } from '../../shared/learn/readModel'
import { readLineJson } from '../../shared/line/readLineJson'
import { opinionFile, readOpinionFile } from '../../shared/opinion/opinionFile'
import { readSweepCsv } from '../../shared/sweep/readSweepCsv'
import { opinionOf } from '../support/editedJob'
import { digest, packed, smallJob, sourceOf } from '../support/packedJob'
import { mutated } from './mutated'

const root = resolve(import.meta.dirname, '../..')

/** What is wrong with what came of a damaged file; `null`: nothing. */
type Check = (bytes: Uint8Array) => Promise<string | null> | string | null

interface Kind {
  /** Files of it that are whole; a case damages one. */
  readonly whole: readonly Uint8Array[]
  readonly check: Check
}

const fileOf = (path: string) => Uint8Array.from(readFileSync(resolve(root, path)))
const small = smallJob()
const jobFile = await packed(small.job, small.beside)
const tone = {
  channels: [Float32Array.from({ length: 4000 }, (_, n) => 0.3 * Math.sin(n / 13))],
  sampleRateHz: 8000,
  encoding: { kind: 'pcm', bits: 16 },
  problems: [],
} as const
const sounds = (['pcm16', 'pcm24', 'float32'] as const).map((encoding) => writeWav(tone, { encoding }))
const flacs = sounds.slice(0, 2).map((wav) => flacOf(wav)!)
const opinions = utf8Bytes(
  opinionFile(small.job, [
    opinionOf('one', { note: 'by the wall', again: [{ point: 2, note: 'a mower' }] }),
    opinionOf('two', { comments: [{ clip: 'a'.repeat(64), atS: 1.5, text: 'gurgles' }] }),
  ]),
)

/** Every kind of file that the program reads from others. */
export const KINDS: Readonly<Record<string, Kind>> = {
  'job file': { whole: [jobFile], check: checkJobFile },
  opinions: {
    whole: [opinions],
    check: (bytes) => checkNumbers(readOpinionFile(decodeText(bytes, 'f'), 'f').opinions.map(opinionJson)),
  },
  WAV: { whole: sounds, check: checkWav },
  FLAC: { whole: flacs, check: checkFlac },
  sheet: {
    whole: [fileOf('demo-audio/sweep.csv')],
    check: (bytes) => checkNumbers(readSweepCsv(decodeText(bytes, 'f'), 'f').rows),
  },
  line: {
    whole: [fileOf('demo-audio/line.json')],
    check: (bytes) => checkNumbers(readLineJson(parseJson(decodeText(bytes, 'f'), 'f'), 'f').line),
  },
  detector: {
    whole: [fileOf('public/starting-detector.json')],
    check: (bytes) => checkNumbers(readModel(decodeText(bytes, 'f'), 'f').trees),
  },
}

async function checkJobFile(bytes: Uint8Array): Promise<string | null> {
  const kept = new Map<string, Uint8Array>()
  const { job } = await openJobFile(sourceOf(bytes), 'f.zip', {
    digest,
    keep: async ({ sha256, bytes: each }) => void kept.set(sha256, each),
    onDone: () => undefined,
  })
  for (const [sha256, each] of kept) {
    if ((await digest(each)) !== sha256) return `bytes under ${sha256} are others`
    if (!small.beside.has(sha256)) return `a sound came out that never went in: ${sha256}`
  }
  return checkNumbers(jobJson(job))
}

function checkWav(bytes: Uint8Array): string | null {
  const clip = readWav(bytes, 'f.wav')
  if (clip.channels.some((samples) => samples.some((sample) => !Number.isFinite(sample))))
    return 'a sample is not finite'
  return checkNumbers(clipEvidence(clip))
}

/** It is refused, or is a file that can be read or refused. */
function checkFlac(bytes: Uint8Array): string | null {
  const wav = wavOfFlac(bytes)
  return wav === null ? null : checkWav(wav)
}

/** No number that is none may come out of a reader, however deep. */
function checkNumbers(value: unknown): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${value} came out`
  if (typeof value !== 'object' || value === null) return null
  for (const each of ArrayBuffer.isView(value) ? [] : Object.values(value)) {
    const wrong = checkNumbers(each)
    if (wrong !== null) return wrong
  }
  return null
}

/**
 * One damaged file, made and read.
 *
 * @param seed Its name before the first slash is of the run, after that come the kind and a number.
 * @returns What is wrong; `null` for nothing.
 */
export async function checkCase(seed: string): Promise<string | null> {
  const kind = KINDS[seed.split('/')[1] ?? '']
  if (kind === undefined) return `${seed} names no kind of file`
  const random = new Random(seed)
  const bytes = mutated(kind.whole[random.integer(0, kind.whole.length - 1)]!, random)
  try {
    return await kind.check(bytes)
  } catch (error) {
    if (error instanceof FormatError) return null
    return error instanceof Error ? (error.stack ?? error.message) : String(error)
  }
}
