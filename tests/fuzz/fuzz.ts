import '../../shared/words/speakAll'
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { readWav } from '../../shared/audio/readWav'
import { writeWav } from '../../shared/audio/writeWav'
import { decodeText } from '../../shared/base/decodeText'
import { FormatError } from '../../shared/base/errors'
import { parseJson } from '../../shared/base/parseJson'
import { Random } from '../../shared/base/random'
import { clipEvidence } from '../../shared/evidence/clipEvidence'
import { jobJson } from '../../shared/job/jobJson'
import { openJobFile } from '../../shared/jobfile/openJobFile'
import { readModel } from '../../shared/learn/readModel'
import { readLineJson } from '../../shared/line/readLineJson'
import { readSweepCsv } from '../../shared/sweep/readSweepCsv'
import { digest, packed, smallJob, sourceOf } from '../support/packedJob'
import { mutated } from './mutated'

/**
 * Damaged files of every kind that the program reads, for as long as told: `npm run fuzz -- [--minutes M] [--seed S]`. Each must be
 * refused with a `FormatError`, or read into something sound; nothing else may be thrown, nothing may take longer than two
 * seconds, and no sound or photo of a job file may come out that does not carry its own digest. A case is told by its seed,
 * with which it comes again; what is found becomes a test of that reader.
 */
const root = resolve(import.meta.dirname, '../..')
const LONGEST_MS = 2000
const MOST_BYTES = 500e6

const small = smallJob()
const jobFile = await packed(small.job, small.beside)
const sounds = [8, 16, 24, 32].map((bits) =>
  writeWav({
    channels: [Float32Array.from({ length: 4000 }, (_, n) => 0.3 * Math.sin(n / (5 + bits)))],
    sampleRateHz: 8000,
    encoding: bits === 32 ? { kind: 'float', bits: 32 } : { kind: 'pcm', bits: bits as 8 | 16 | 24 },
    problems: [],
  }),
)
const fileOf = (path: string) => Uint8Array.from(readFileSync(resolve(root, path)))
const sheet = fileOf('demo-audio/sweep.csv')
const line = fileOf('demo-audio/line.json')
const model = fileOf('public/starting-detector.json')

/** What is wrong with what came of a damaged file; `null`: nothing. */
type Check = (bytes: Uint8Array) => Promise<string | null> | string | null

const KINDS: Readonly<Record<string, { readonly whole: readonly Uint8Array[]; readonly check: Check }>> = {
  'job file': { whole: [jobFile], check: checkJobFile },
  WAV: { whole: sounds, check: checkWav },
  sheet: { whole: [sheet], check: (bytes) => checkNumbers(readSweepCsv(decodeText(bytes, 'f'), 'f').rows) },
  line: {
    whole: [line],
    check: (bytes) => checkNumbers(readLineJson(parseJson(decodeText(bytes, 'f'), 'f'), 'f').line),
  },
  detector: { whole: [model], check: (bytes) => checkNumbers(readModel(decodeText(bytes, 'f'), 'f').trees) },
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
    if (![...small.beside.keys()].includes(sha256)) return `a sound came out that never went in: ${sha256}`
  }
  return checkNumbers(jobJson(job))
}

function checkWav(bytes: Uint8Array): string | null {
  const clip = readWav(bytes, 'f.wav')
  if (clip.channels.some((samples) => samples.some((sample) => !Number.isFinite(sample))))
    return 'a sample is not finite'
  return checkNumbers(clipEvidence(clip))
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

async function once(kind: string, seed: string): Promise<string | null> {
  const random = new Random(seed)
  const { whole, check } = KINDS[kind]!
  const bytes = mutated(whole[random.integer(0, whole.length - 1)]!, random)
  const started = performance.now()
  const wrong = await attempt(check, bytes)
  const tookMs = performance.now() - started
  return wrong ?? (tookMs > LONGEST_MS ? `took ${(tookMs / 1000).toFixed(1)} s` : null)
}

async function attempt(check: Check, bytes: Uint8Array): Promise<string | null> {
  try {
    return await check(bytes)
  } catch (error) {
    if (error instanceof FormatError) return null
    return error instanceof Error ? (error.stack ?? error.message) : String(error)
  }
}

async function main(): Promise<void> {
  const words = process.argv.slice(2)
  const told = (name: string) => {
    const at = words.indexOf(name)
    return at < 0 ? null : (words[at + 1] ?? '')
  }
  const minutes = Number(told('--minutes') ?? 1)
  const first = told('--seed') ?? new Date().toISOString().slice(0, 10)
  if (!(minutes > 0)) {
    console.error('usage: npm run fuzz -- [--minutes M] [--seed S]')
    process.exit(2)
  }
  const until = performance.now() + 60_000 * minutes
  const counts = Object.fromEntries(Object.keys(KINDS).map((kind) => [kind, 0]))
  const found: string[] = []
  let most = 0
  for (let i = 0; performance.now() < until; i++) {
    for (const kind of Object.keys(KINDS)) {
      const wrong = await once(kind, `${first}/${kind}/${i}`)
      counts[kind]!++
      if (wrong !== null) found.push(`${first}/${kind}/${i}: ${wrong}`)
    }
    most = Math.max(most, process.memoryUsage().rss)
  }
  for (const [kind, count] of Object.entries(counts)) console.log(`${kind.padEnd(9)} ${count} damaged files`)
  console.log(`memory at most ${(most / 1e6).toFixed(0)} MB${most > MOST_BYTES ? ', TOO MUCH' : ''}`)
  console.log(found.length === 0 ? 'nothing found' : `found ${found.length}:\n${found.slice(0, 20).join('\n')}`)
  process.exit(found.length === 0 && most <= MOST_BYTES ? 0 : 1)
}

await main()
