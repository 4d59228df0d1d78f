import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { writeWav } from '../../../shared/audio/writeWav'
import { Random } from '../../../shared/base/random'
import { readModel } from '../../../shared/learn/readModel'
import { buildCli, folderWith, noiseClip, runCli } from '../../support/runCli'

/* Clips made up for this: noise, and noise with short decaying tones in it. */

let program = ''
let cache = ''
let jobs: string[] = []
beforeAll(async () => {
  program = await buildCli()
  cache = folderWith({})
  jobs = [1, 2, 3, 4].map((job) => jobFolder(job, 12))
})

const RATE_HZ = 8000

function clip(seed: string, isLeak: boolean): Uint8Array {
  const random = new Random(seed)
  const samples = Float32Array.from({ length: RATE_HZ }, () => random.normal(0, 0.02))
  for (let ring = 0; isLeak && ring < 15; ring++) {
    const start = random.integer(0, RATE_HZ - 400)
    const hz = random.uniform(500, 1500)
    for (let n = 0; n < 400; n++) {
      samples[start + n]! += 0.2 * Math.exp(-n / 80) * Math.sin((2 * Math.PI * hz * n) / RATE_HZ)
    }
  }
  return writeWav({ sampleRateHz: RATE_HZ, channels: [samples], encoding: { kind: 'pcm', bits: 16 }, problems: [] })
}

function jobFolder(job: number, clips: number): string {
  const files = Array.from({ length: clips }, (_, i) => [`${i}.wav`, clip(`${job}/${i}`, i % 2 === 0)] as const)
  const rows = files.map(([file], i) => `${file},${i % 2 === 0 ? 'leak' : 'no leak'},job ${job},plate,grass`)
  return folderWith({ ...Object.fromEntries(files), 'labels.csv': `file,label,job,device,cover\n${rows.join('\n')}\n` })
}

const run = (...args: string[]) => runCli(program, [...args, '--cache', cache])
const modelIn = (...args: string[]) => {
  const out = join(folderWith({}), 'ours.json')
  const { code, stdout, stderr } = run('train', ...jobs, '--out', out, ...args)
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
  return { out, stdout }
}
const refusal = (...args: string[]) => {
  const { code, stdout, stderr } = run(...args)
  expect({ code, stdout }, stderr).toEqual({ code: 2, stdout: '' })
  expect(stderr).toMatch(/^yardhark: [^\n]+\n$/)
  return stderr
}

describe('yardhark train', () => {
  it('writes a model and its card, and says what it is worth on jobs kept back', () => {
    const { out, stdout } = modelIn(
      '--name',
      'Two plates',
      '--about',
      'Made up for a test; <b>nobody</b> recorded them.',
    )
    const model = readModel(readFileSync(out, 'utf8'), out)
    expect(model.card).toMatchObject({ name: 'Two plates', leaks: 24, others: 24, jobs: 4, devices: ['plate'] })
    expect(model.evaluations[0]!.area.area).toBeGreaterThan(0.9)
    expect(stdout).toContain('learnt from 48 clips, 24 of a leak and 24 of none, of 4 jobs')
    const card = readFileSync(out.replace('.json', '.card.md'), 'utf8')
    expect(card).toContain('# Two plates')
    expect(card).toContain('\\<b\\>nobody')
    expect(card).toContain('Running water bubbles as well')
  })

  it('goes on where it was stopped: what was measured is kept by content, a torn last line is passed over', () => {
    const own = folderWith({})
    const train = () => {
      const out = join(folderWith({}), 'm.json')
      expect(runCli(program, ['train', ...jobs, '--out', out, '--cache', own]).code).toBe(0)
      return readModel(readFileSync(out, 'utf8'), out)
    }
    const first = train()
    const kept = join(own, readdirSync(own)[0]!)
    const lines = readFileSync(kept, 'utf8').trimEnd().split('\n')
    expect(lines).toHaveLength(48)
    writeFileSync(kept, `${lines.slice(0, 20).join('\n')}\n${lines[20]!.slice(0, 50)}`)
    const again = train()
    expect({ ...again, card: null }).toEqual({ ...first, card: null })
    // The torn line stays, what was missing stands below it.
    expect(readFileSync(kept, 'utf8').trimEnd().split('\n').length).toBeGreaterThanOrEqual(48)
  })

  it('refuses what cannot teach and installs nothing half-way', () => {
    const out = join(folderWith({}), 'ours.json')
    const sheet = (text: string, files: Record<string, Uint8Array> = {}) => folderWith({ ...files, 'labels.csv': text })
    const one = sheet('file,label\na.wav,leak\n', { 'a.wav': noiseClip(1) })
    expect(refusal('train', one, '--out', out)).toContain('no clip is labelled as no leak')
    expect(refusal('train', sheet('file,label\na.wav,leak\n'), '--out', out)).toContain(
      '"a.wav" has a label and cannot be opened',
    )
    expect(refusal('train', folderWith({}), '--out', out)).toContain('has no labels.csv')
    const twice = sheet('file,label\na.wav,leak\nb.wav,no leak\n', { 'a.wav': noiseClip(1), 'b.wav': noiseClip(1) })
    expect(refusal('train', twice, '--out', out)).toContain('the very same clip, is labelled none')
    expect(refusal('train', jobs[0]!, '--out', out)).toContain('6 clips of leaks and 6 of none')
    expect(refusal('train', ...jobs)).toContain('add --out')
    expect(refusal('train', ...jobs, '--out', out, '--miss', 'few')).toContain('--miss is "few"')
    expect(() => readFileSync(out)).toThrow()
    const there = modelIn().out
    expect(refusal('train', ...jobs, '--out', there)).toContain('add --force')
  })
})

describe('yardhark score and evaluate', () => {
  it('score clips, mark what is unlike training, and name what cannot be read', () => {
    const { out } = modelIn()
    const files = folderWith({
      'leak.wav': clip('new', true),
      'none.wav': clip('new', false),
      'bad.wav': new Uint8Array(9),
    })
    const all = ['leak.wav', 'none.wav', 'bad.wav'].map((name) => join(files, name))
    const { code, stdout } = run('score', out, ...all, '--json', '--device', 'a horn', '--cover', 'grass')
    expect(code).toBe(0)
    const [leak, none, bad] = JSON.parse(stdout)
    expect(leak.probability).toBeGreaterThan(none.probability)
    expect(leak).toMatchObject({ new_device: true, new_cover: false })
    expect(bad).toMatchObject({ probability: null, problems: [{ severity: 'spoilt' }] })
    expect(run('score', out, ...all).stdout).toMatch(/leak\.wav +\d\.\d\d/)
    expect(refusal('score', out)).toContain('needs the name of a clip')
    expect(refusal('score', all[0]!, all[1]!)).toContain('leak.wav')
  })

  it('evaluate on new jobs, and leave out what was learnt from', () => {
    const { out } = modelIn()
    const fresh = jobFolder(9, 20)
    const { code, stdout } = run('evaluate', out, fresh, jobs[0]!, '--json')
    expect(code).toBe(0)
    expect(JSON.parse(stdout)).toMatchObject({ left_out: 12, clips: 20 })
    expect(run('evaluate', out, fresh).stdout).toContain('On clips it has not learnt from')
    expect(refusal('evaluate', out, jobs[0]!)).toContain('12 clips were left out')
  })
})

describe('yardhark locate', () => {
  it('asks a detector when told to, says what it weighed, and is as before without', () => {
    const { out } = modelIn()
    const told = (...more: string[]) => {
      const { code, stdout, stderr } = runCli(program, ['locate', 'demo-audio', '--json', ...more])
      expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
      return JSON.parse(stdout) as { reasons: { key: string }[]; sources: { along_m: number }[] }
    }
    const about = (answer: ReturnType<typeof told>) =>
      answer.reasons.filter(({ key }) => key.startsWith('reason_detector')).map(({ key }) => key)
    expect(about(told())).toEqual([])
    const asked = about(told('--detector', out, '--device', 'rod', '--cache', cache))
    expect(asked[0]).toMatch(/^reason_detector_(?:for|against|neither)$/)
    expect(asked).toContain('reason_detector_unheard')
  })

  it('names a model that is none', () => {
    expect(runCli(program, ['locate', 'demo-audio', '--detector', 'demo-audio/sweep.csv']).stderr).toMatch(
      /^yardhark: .*sweep\.csv.*\n$/,
    )
  })
})
