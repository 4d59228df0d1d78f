import { execFileSync } from 'node:child_process'
import type { Job } from '../../shared/job/job'
import { jobJson } from '../../shared/job/jobJson'
import { readJob } from '../../shared/job/readJob'
import { openYard } from '../browser/yardPage'
import { opinionOf } from '../support/editedJob'
import { clipOf, smallJob } from '../support/packedJob'
import { noiseClip } from '../support/runCli'

/**
 * The list of an office: a hundred jobs of thirty clips each, opened in a browser; `npm run bench:desk`. Prints how long it is
 * from asking for the page to all hundred standing in the list, how long a search takes, and what memory the page has then,
 * beside the same page with no job at all, in the same run.
 */
const JOBS = 100
const CLIPS = 30
const ROUNDS = 5
const LIST_BOUND_S = 1
const MEMORY_BOUND_MB = 300

const beside = new Map<string, Uint8Array>()
const jobs = Array.from({ length: JOBS }, (_, n) => jobOf(n))

function jobOf(n: number): Job {
  const { job } = smallJob()
  const [line] = job.lines
  const clips = Array.from({ length: CLIPS }, (_, i) => {
    const bytes = noiseClip(0.5, 0.05 + (CLIPS * n + i) / 10_000)
    return clipOf(beside, 1 + (i >> 1), i % 2 === 0 ? 'on' : 'off', bytes)
  })
  const made: Job = {
    ...job,
    id: `bench-${n}`,
    name: `Yard ${n}`,
    changedS: 1_790_000_000 - 86_400 * n,
    lines: [{ ...line!, sweeps: [{ id: 's', name: '1', clips, problems: [] }] }],
    opinions: [opinionOf(`o${n}`, { jobId: `bench-${n}`, lineId: line!.id })],
  }
  return readJob(jobJson(made), 'bench')
}

interface Measured {
  readonly listS: number
  readonly searchS: number
  readonly heapMb: number
  readonly rendererMb: number
}

const yard = await openYard()
const opened = await yard.open('desk')
const { context } = opened
let { page } = opened
page.setDefaultTimeout(120_000)
// Whoever runs this without compiling it first names its functions by this.
await context.addInitScript('globalThis.__name = (named) => named')
await page.reload()
await page.getByRole('button', { name: 'New job' }).waitFor()
const empty = await measured(0)
await fill()
const full = await measured(JOBS)
await yard.close()

const row = (name: string, of: (each: Measured) => string) =>
  console.log(`${name.padEnd(34)}${of(empty).padStart(12)}${of(full).padStart(12)}`)
console.log(
  `${JOBS} jobs of ${CLIPS} clips, median of ${ROUNDS}`.padEnd(34) +
    'no job'.padStart(12) +
    `${JOBS} jobs`.padStart(12),
)
row('page asked for to list shown, s', ({ listS }) => listS.toFixed(2))
row('a search, s', ({ searchS }) => (searchS < 0 ? '-' : searchS.toFixed(2)))
row('memory of scripts, MB', ({ heapMb }) => heapMb.toFixed(0))
row('memory of the page in all, MB', ({ rendererMb }) => rendererMb.toFixed(0))
const met = full.listS <= LIST_BOUND_S && full.rendererMb <= MEMORY_BOUND_MB
console.log(`asked: within ${LIST_BOUND_S} s and ${MEMORY_BOUND_MB} MB; ${met ? 'met' : 'BROKEN'}`)
process.exit(met ? 0 : 1)

/** Puts the jobs where the page keeps its own. */
async function fill(): Promise<void> {
  const kept = jobs.map((job) => ({
    id: job.id,
    json: jobJson(job),
    summary: {
      id: job.id,
      name: job.name,
      changedS: job.changedS,
      firstLineId: job.lines[0]!.id,
      lineCount: 1,
      pointCount: CLIPS / 2,
      stage: 'heard',
      opinionCount: 1,
    },
  }))
  const sounds = [...beside].map(([sha256, bytes]) => ({ sha256, base64: Buffer.from(bytes).toString('base64') }))
  for (let at = 0; at < sounds.length; at += 300) {
    await page.evaluate(
      async (some) => {
        const database = await new Promise<IDBDatabase>((resolve, reject) => {
          const open = indexedDB.open('yardhark')
          open.onsuccess = () => resolve(open.result)
          open.onerror = () => reject(open.error)
        })
        const write = database.transaction('sounds', 'readwrite')
        for (const { sha256, base64 } of some) {
          const bytes = new Blob([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))])
          write.objectStore('sounds').put({ sha256, bytes })
        }
        await new Promise((resolve) => (write.oncomplete = resolve))
        database.close()
      },
      sounds.slice(at, at + 300),
    )
  }
  await page.evaluate(async (all) => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const open = indexedDB.open('yardhark')
      open.onsuccess = () => resolve(open.result)
      open.onerror = () => reject(open.error)
    })
    const write = database.transaction(['jobs', 'summaries'], 'readwrite')
    for (const each of all) {
      write.objectStore('jobs').put(each)
      write.objectStore('summaries').put({ id: each.id, summary: each.summary })
    }
    await new Promise((resolve) => (write.oncomplete = resolve))
    database.close()
  }, kept)
}

async function measured(count: number): Promise<Measured> {
  const rounds: Measured[] = []
  for (let i = 0; i < ROUNDS; i++) rounds.push(await once(count))
  const median = (of: (each: Measured) => number) => rounds.map(of).sort((a, b) => a - b)[ROUNDS >> 1]!
  return {
    listS: median(({ listS }) => listS),
    searchS: median(({ searchS }) => searchS),
    heapMb: median(({ heapMb }) => heapMb),
    rendererMb: Math.max(...rounds.map(({ rendererMb }) => rendererMb)),
  }
}

async function once(count: number): Promise<Measured> {
  // A page of its own, in a process of its own: what another one left behind is not its memory.
  await page.close()
  page = await context.newPage()
  await page.goto(yard.url, { waitUntil: 'commit' })
  const listS = await page.evaluate(
    (wanted) =>
      new Promise<number>((resolve) => {
        const look = () => {
          const isThere =
            wanted === 0
              ? document.querySelector('.jobs-empty') !== null
              : document.querySelectorAll('.job-entry').length === wanted
          if (isThere) requestAnimationFrame(() => resolve(performance.now() / 1000))
          else requestAnimationFrame(look)
        }
        look()
      }),
    count,
  )
  await page.waitForTimeout(1500) // what is tidied up afterwards counts for the memory
  let searchS = -1
  if (count > 0) {
    const started = performance.now()
    await page.getByLabel('Search the jobs').fill('yard 42')
    await page.getByText(`Shown: 1 of ${count} jobs.`).waitFor()
    searchS = (performance.now() - started) / 1000
  }
  const session = await context.newCDPSession(page)
  await session.send('Performance.enable')
  const { metrics } = await session.send('Performance.getMetrics')
  const heap = metrics.find(({ name }) => name === 'JSHeapUsedSize')!.value
  await session.detach()
  return { listS, searchS, heapMb: heap / 1e6, rendererMb: rendererMb() }
}

/** Resident memory of the largest process that shows pages, MB. */
function rendererMb(): number {
  const lines = execFileSync('ps', ['-eo', 'rss=,args='], { encoding: 'utf8', maxBuffer: 1e8 }).split('\n')
  const sizes = lines.filter((line) => line.includes('--type=renderer')).map((line) => Number.parseInt(line, 10))
  return (Math.max(0, ...sizes) * 1024) / 1e6
}
