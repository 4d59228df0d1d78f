import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { availableParallelism, tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { readWav } from '../../../shared/audio/readWav'
import { strongestChannel } from '../../../shared/audio/strongestChannel'
import { writeWav } from '../../../shared/audio/writeWav'
import { clipEvidence } from '../../../shared/evidence/clipEvidence'
import { detectorValues } from '../../../shared/learn/detectorFeatures'
import { timbre } from '../../../shared/spectrum/timbre'
import { demoYard } from '../../../shared/synth/demoJob'
import { renderClip } from '../../../shared/synth/renderClip'

/**
 * Training on many clips: `npm run bench:many -- [CLIPS]`. Writes that many clips of the invented job, no two alike, trains on
 * them, kills the program in the middle, starts it again, and prints how quick it was, how much memory it took as it went,
 * and what it had to measure twice. Needs the built command line and half a megabyte of disk a clip.
 */
const PROGRAM = resolve(import.meta.dirname, '../../../dist/cli/yardhark.js')
/** Part of the clips after which it is killed. */
const KILLED_AT = 0.4
const CLIPS_A_JOB = 50
const LOOK_MS = 2000

async function main(): Promise<void> {
  const count = Number(process.argv[2] ?? 10_000)
  if (!Number.isInteger(count) || count < 200) {
    console.error('usage: npm run bench:many -- [CLIPS, at least 200]')
    process.exit(2)
  }
  const folder = mkdtempSync(join(tmpdir(), 'yardhark-many-'))
  try {
    const audioS = writeClips(join(folder, 'clips'), count)
    printParts(join(folder, 'clips'))
    const first = await run(folder, (done) => done >= KILLED_AT * count)
    const kept = measured(folder).length
    const second = await run(folder, () => false)
    const lines = measured(folder)
    const wallS = first.wallS + second.wallS
    console.log(`\n${count} clips, ${(audioS / 3600).toFixed(1)} hours, on ${availableParallelism()} cores`)
    console.log(`killed after ${kept} clips, started again; trained: ${second.code === 0 ? 'yes' : 'NO'}`)
    console.log(`measured twice: ${lines.length - new Set(lines).size}; left out: ${count - new Set(lines).size}`)
    console.log(
      `both runs together: ${wallS.toFixed(0)} s, ${(audioS / wallS).toFixed(0)} x real time with timbre and training`,
    )
    const memory = [...first.memoryMb, ...second.memoryMb].filter(({ done }) => done > 0)
    for (const share of [0.1, 0.25, 0.39, 0.6, 0.8, 0.99]) {
      const at = memory.find(({ done }) => done >= share * count)
      if (at)
        console.log(
          `memory after ${String(Math.round(100 * share)).padStart(2)} % of the clips: ${at.mb.toFixed(0)} MB`,
        )
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Writes the clips with their labels. @returns How long they last together, s. */
function writeClips(folder: string, count: number): number {
  mkdirSync(folder)
  const yard = demoYard()
  const sources = yard.clips.filter(({ spoil }) => spoil === null).map((plan) => renderClip(yard, plan))
  const rows: string[] = []
  let audioS = 0
  for (let i = 0; i < count; i++) {
    const { channels, sampleRateHz, ...rest } = sources[i % sources.length]!
    const samples = channels[0]!.slice()
    // A few steps of the last samples tell the clips apart.
    for (let bit = 0; bit < 16; bit++) samples[samples.length - 1 - bit] = ((i >> bit) & 1) / 4096
    writeFileSync(join(folder, `${i}.wav`), writeWav({ ...rest, channels: [samples], sampleRateHz }))
    rows.push(`${i}.wav,${i % 2 === 0 ? 'leak' : 'no leak'},job ${Math.floor(i / CLIPS_A_JOB)}`)
    audioS += samples.length / sampleRateHz
  }
  writeFileSync(join(folder, 'labels.csv'), `file,label,job\n${rows.join('\n')}\n`)
  return audioS
}

/** How quick one core is with timbre and with everything else, by processor time. */
function printParts(folder: string): void {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.wav'))
    .slice(0, 60)
  const spent = { rest: 0, timbre: 0 }
  let audioS = 0
  const timed = <Result>(part: keyof typeof spent, work: () => Result): Result => {
    const before = process.cpuUsage()
    const result = work()
    const { user, system } = process.cpuUsage(before)
    spent[part] += (user + system) / 1e6
    return result
  }
  const hear = (name: string) => {
    const bytes = readFileSync(join(folder, name))
    const { clip, evidence } = timed('rest', () => {
      const read = readWav(bytes, name)
      return { clip: read, evidence: clipEvidence(read) }
    })
    const heard = timed('timbre', () => timbre(clip.channels[strongestChannel(clip)]!, clip.sampleRateHz))
    timed('rest', () => detectorValues({ evidence, timbre: heard }))
    audioS += clip.channels[0]!.length / clip.sampleRateHz
  }
  for (const name of files.slice(0, 20)) hear(name)
  Object.assign(spent, { rest: 0, timbre: 0 })
  audioS = 0
  for (const name of files.slice(20)) hear(name)
  const times = audioS / spent.rest
  console.log(
    `everything but timbre: ${times.toFixed(0)} x real time a core, ${(2 * times).toFixed(0)} x on two (asked: 150 x)`,
  )
  console.log(`timbre: ${(audioS / spent.timbre).toFixed(0)} x real time a core`)
}

interface Run {
  readonly code: number | null
  readonly wallS: number
  readonly memoryMb: readonly { readonly done: number; readonly mb: number }[]
}

function run(folder: string, isEnough: (done: number) => boolean): Promise<Run> {
  const started = performance.now()
  const memoryMb: { done: number; mb: number }[] = []
  const args = ['train', join(folder, 'clips'), '--out', join(folder, 'model.json'), '--cache', join(folder, 'cache')]
  const child = spawn(process.execPath, [PROGRAM, ...args], { stdio: ['ignore', 'ignore', 'inherit'] })
  return new Promise((answer) => {
    const look = setInterval(() => {
      const done = measured(folder).length
      const resident = /VmRSS:\s+(\d+)/.exec(readIfThere(`/proc/${child.pid}/status`))?.[1]
      if (resident) memoryMb.push({ done, mb: Number(resident) / 1024 })
      if (isEnough(done)) child.kill('SIGKILL')
    }, LOOK_MS)
    child.on('exit', (code) => {
      clearInterval(look)
      answer({ code, wallS: (performance.now() - started) / 1000, memoryMb })
    })
  })
}

function readIfThere(path: string): string {
  return existsSync(path) ? readFileSync(path, 'utf8') : ''
}

/** Digests of the clips that are kept as measured. */
function measured(folder: string): string[] {
  const cache = join(folder, 'cache')
  const names = existsSync(cache) ? readdirSync(cache) : []
  return names.flatMap((name) =>
    [...readFileSync(join(cache, name), 'utf8').matchAll(/^\{"sha256":"([0-9a-f]{64})".*\}$/gm)].map(
      ([, digest]) => digest!,
    ),
  )
}

await main()
