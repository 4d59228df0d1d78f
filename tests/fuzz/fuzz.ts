import { type ChildProcess, fork } from 'node:child_process'
import { appendFileSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { checkCase, KINDS } from './kinds'

/**
 * Damaged files of every kind that the program reads, for as long as told: `npm run fuzz -- [--minutes M] [--seed S]`. Each must be
 * refused with a `FormatError`, or read into something sound; nothing else may be thrown, nothing may take longer than two
 * seconds, and no sound or photo of a job file may come out that does not carry its own digest. Files are read in a process
 * of their own, which is ended where one hangs.
 *
 * A case is told by its seed, with which it comes again. What is found is added to found.txt, which every run reads first,
 * and becomes a test of that reader.
 */
const FOUND = resolve(import.meta.dirname, 'found.txt')
const LONGEST_MS = 2000
const MOST_BYTES = 500e6

interface Said {
  readonly seed: string
  readonly wrong: string | null
  readonly rss: number
}

/** Reads one case after the other, each in a process that can be ended. */
class Reader {
  private child: ChildProcess | null = null
  /** Most memory that the process had after a case, bytes. */
  most = 0

  async read(seed: string): Promise<string | null> {
    this.child ??= await this.start()
    const { child } = this
    return new Promise((resolve) => {
      const late = setTimeout(() => this.endWith(`took longer than ${LONGEST_MS / 1000} s`, resolve), LONGEST_MS)
      child.once('exit', () => {
        clearTimeout(late)
        this.endWith('ended the process', resolve)
      })
      child.once('message', (message) => {
        clearTimeout(late)
        child.removeAllListeners('exit')
        const { wrong, rss } = message as Said
        this.most = Math.max(this.most, rss)
        resolve(wrong)
      })
      child.send(seed)
    })
  }

  end(): void {
    this.child?.removeAllListeners()
    this.child?.kill('SIGKILL')
    this.child = null
  }

  private endWith(wrong: string, resolve: (wrong: string) => void): void {
    this.end()
    resolve(wrong)
  }

  /** It says that it is there once it has loaded everything, which is not what is measured. */
  private start(): Promise<ChildProcess> {
    const child = fork(import.meta.filename, ['--read'], { execArgv: process.execArgv })
    return new Promise((resolve) => child.once('message', () => resolve(child)))
  }
}

function serve(): void {
  process.on('message', async (seed: string) => {
    const wrong = await checkCase(seed)
    process.send!({ seed, wrong, rss: process.memoryUsage().rss } satisfies Said)
  })
  process.send!('ready')
}

function told(name: string): string | null {
  const at = process.argv.indexOf(name)
  return at < 0 ? null : (process.argv[at + 1] ?? '')
}

async function main(): Promise<void> {
  const minutes = Number(told('--minutes') ?? 1)
  const first = told('--seed') ?? new Date().toISOString().slice(0, 10)
  if (!(minutes > 0) || first.includes('/')) {
    console.error('usage: npm run fuzz -- [--minutes M] [--seed S]')
    process.exit(2)
  }
  const before = readFileSync(FOUND, 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
  const until = performance.now() + 60_000 * minutes
  const counts = Object.fromEntries(Object.keys(KINDS).map((kind) => [kind, 0]))
  const found: string[] = []
  const reader = new Reader()
  const look = async (seed: string) => {
    const wrong = await reader.read(seed)
    counts[seed.split('/')[1]!]!++
    if (wrong === null) return
    found.push(`${seed}: ${wrong}`)
    if (!before.includes(seed)) appendFileSync(FOUND, `${seed}\n`)
  }
  for (const seed of before) await look(seed)
  for (let i = 0; performance.now() < until; i++) {
    for (const kind of Object.keys(KINDS)) await look(`${first}/${kind}/${i}`)
  }
  reader.end()
  for (const [kind, count] of Object.entries(counts)) console.log(`${kind.padEnd(9)} ${count} damaged files`)
  console.log(`seeds of ${first}, and ${before.length} that were found before`)
  console.log(`memory at most ${(reader.most / 1e6).toFixed(0)} MB${reader.most > MOST_BYTES ? ', TOO MUCH' : ''}`)
  console.log(found.length === 0 ? 'nothing found' : `found ${found.length}:\n${found.slice(0, 20).join('\n')}`)
  process.exit(found.length === 0 && reader.most <= MOST_BYTES ? 0 : 1)
}

if (process.argv.includes('--read')) serve()
else await main()
