import { spawn } from 'node:child_process'
import { readdirSync, readFileSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { CLIP_FEATURES } from '../../../shared/evidence/features'
import { csvRecords } from '../../../shared/sweep/csvRecords'
import { COMMAND_HELP } from '../../../shared/words/commandHelp'
import {
  INSPECT_OPTIONS,
  LOCATE_OPTIONS,
  MERGE_OPTIONS,
  OPEN_OPTIONS,
  PACK_OPTIONS,
  SYNTH_OPTIONS,
  VERIFY_OPTIONS,
} from '../../../src/cli/commandOptions'
import { readSweepFolder } from '../../../src/cli/readSweepFolder'
import { buildCli, folderWith, noiseClip, runCli } from '../../support/runCli'

let program = ''
beforeAll(async () => {
  program = await buildCli()
})
const run = (...args: string[]) => runCli(program, args)

/** What is promised of every wrong call: status 2, nothing on standard output, one line on standard error. */
const refusal = (...args: string[]): string => {
  const { code, stdout, stderr } = run(...args)
  expect({ code, stdout }, stderr).toEqual({ code: 2, stdout: '' })
  expect(stderr).toMatch(/^yardhark: [^\n]+\n$/)
  return stderr.slice('yardhark: '.length, -1)
}

describe('the program', () => {
  it('tells what it can do, and its version', () => {
    expect(run('--help')).toEqual({ code: 0, stdout: COMMAND_HELP.all, stderr: '' })
    expect(run('locate', '--help')).toEqual({ code: 0, stdout: COMMAND_HELP.locate, stderr: '' })
    expect(run('help', 'synth')).toEqual({ code: 0, stdout: COMMAND_HELP.synth, stderr: '' })
    const { version } = JSON.parse(readFileSync(join(import.meta.dirname, '../../../package.json'), 'utf8'))
    expect(run('--version').stdout).toBe(`yardhark ${version}\n`)
  })

  it('keeps its help within 80 columns of plain ASCII, and names every option in it', () => {
    const pages = Object.values(COMMAND_HELP).join('')
    expect(pages.split('\n').filter((line) => !/^[\x20-\x7e]{0,80}$/.test(line))).toEqual([])
    const options = {
      locate: LOCATE_OPTIONS,
      inspect: INSPECT_OPTIONS,
      synth: SYNTH_OPTIONS,
      pack: PACK_OPTIONS,
      open: OPEN_OPTIONS,
      verify: VERIFY_OPTIONS,
      merge: MERGE_OPTIONS,
    }
    for (const [command, table] of Object.entries(options)) {
      const told = [...COMMAND_HELP[command as keyof typeof options].matchAll(/^ {2}--([a-z-]+)/gm)].map(
        ([, name]) => name,
      )
      expect(told.sort()).toEqual(Object.keys(table).sort())
    }
  })

  it('refuses a call it does not understand, with the mend', () => {
    expect(refusal()).toBe('no command; yardhark --help lists them')
    expect(refusal('lcoate')).toBe('there is no command lcoate; did you mean locate?')
    expect(refusal('locate', '--jsn', '.')).toBe('there is no option --jsn; did you mean --json?')
    expect(refusal('toString\n')).toBe('there is no command toString\\n; yardhark --help lists them')
  })

  it('says nothing when its reader has seen enough', async () => {
    const child = spawn(process.execPath, [program, 'locate', '--help'], { stdio: ['ignore', 'pipe', 'pipe'] })
    child.stdout.destroy()
    let stderr = ''
    child.stderr.on('data', (piece) => {
      stderr += piece
    })
    await new Promise((resolve) => child.on('close', resolve))
    expect(stderr).toBe('')
  })

  it('ends with 130 and no answer when it is interrupted in the middle of its work', async () => {
    const folder = folderWith({ '1.wav': noiseClip(60) })
    for (let i = 2; i <= 60; i++) symlinkSync(join(folder, '1.wav'), join(folder, `${i}.wav`))
    const interruptedAfter = async (delayMs: number) => {
      const child = spawn(process.execPath, [program, 'locate', folder, '--spacing', '1'], { stdio: 'pipe' })
      const output = { stdout: '', stderr: '' }
      for (const stream of ['stdout', 'stderr'] as const) child[stream].on('data', (piece) => (output[stream] += piece))
      setTimeout(() => child.kill('SIGINT'), delayMs)
      const code = await new Promise<number | null>((resolve) => child.on('close', resolve))
      return { code, ...output }
    }
    // Before the program runs at all, the system ends it, without a status; a busy machine takes long to come so far.
    let delayMs = 500
    let ended = await interruptedAfter(delayMs)
    while (ended.code === null && delayMs < 10_000) {
      delayMs *= 2
      ended = await interruptedAfter(delayMs)
    }
    expect(ended).toEqual({ code: 130, stdout: '', stderr: '' })
  })
})

describe('yardhark inspect', () => {
  const folder = folderWith({ 'a.wav': noiseClip(2), 'b.wav': noiseClip(2, 0.02), 'bad.wav': 'no sound' })
  const clip = (name: string) => join(folder, name)

  it('shows one clip with the meaning of each number', () => {
    const { code, stdout, stderr } = run('inspect', clip('a.wav'))
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    expect(stdout.split('\n').filter((line) => line.length > 100)).toEqual([])
    for (const { heading, meaning } of CLIP_FEATURES)
      expect(stdout).toMatch(new RegExp(`^${heading} .*${meaning.slice(0, 20)}`, 'm'))
    expect(stdout).toContain('2.0 s, 8000 Hz, channels: 1.')
  })

  it('shows several in a table, and names one that cannot be read', () => {
    const { code, stdout } = run('inspect', clip('a.wav'), clip('bad.wav'), clip('gone.wav'))
    expect(code).toBe(0)
    expect(stdout).toMatch(/a\.wav +2\.0 +8\.0 /)
    expect(stdout).toContain(`${clip('bad.wav')}: The clip cannot be read: `)
    expect(stdout.replaceAll(/\n +/g, ' ')).toContain(`${clip('gone.wav')}: The clip is not there.`)
  })

  it('writes a list of objects with --json, in the order of the call', () => {
    const { code, stdout, stderr } = run('inspect', '--json', clip('b.wav'), clip('bad.wav'), clip('a.wav'))
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    const clips = JSON.parse(stdout)
    expect(stdout).toBe(`${JSON.stringify(clips)}\n`)
    expect(clips.map((each: { file: string }) => each.file)).toEqual(['b.wav', 'bad.wav', 'a.wav'].map(clip))
    for (const { bands, rings, ...rest } of [clips[0], clips[2]]) {
      expect(Object.keys(rest)).toEqual(['file', 'duration_s', 'sample_rate_hz', 'channels', 'bubbling', 'problems'])
      expect(Object.keys(bands[0])).toEqual(['mid_hz', 'level_dbfs', 'quiet_dbfs', 'busy_dbfs'])
      expect(Object.keys(rings).slice(0, 3)).toEqual(['rate_per_s', 'median_pitch_hz', 'tonality'])
      expect(rest).toMatchObject({ duration_s: 2, sample_rate_hz: 8000, channels: 1 })
    }
    expect(clips[1]).toMatchObject({ duration_s: null, bands: [], rings: null, bubbling: null })
    expect(clips[1].problems[0]).toMatchObject({ key: 'unreadable', severity: 'spoilt' })
  })

  it('writes one row for each clip with --csv, every number in full', () => {
    const { stdout } = run('inspect', '--csv', clip('a.wav'), clip('bad.wav'))
    const [json] = JSON.parse(run('inspect', '--json', clip('a.wav')).stdout)
    const [header, first, second] = csvRecords(stdout, ',', 'out').map((record) => record.cells)
    const cell = (name: string) => first![header!.indexOf(name)]
    expect(header!.slice(0, 4)).toEqual(['file', 'duration_s', 'sample_rate_hz', 'channels'])
    for (const { id } of CLIP_FEATURES) expect(header).toContain(id)
    expect(cell('band_160_hz_level_dbfs')).toBe(String(json.bands[4].level_dbfs))
    expect(cell('band_6300_hz_level_dbfs')).toBe('')
    expect(second![0]).toBe(clip('bad.wav'))
    expect(second!.at(-1)).toBe('unreadable (spoilt)')
    expect(second).toHaveLength(header!.length)
  })

  it('refuses a call that no clip can answer', () => {
    expect(refusal('inspect')).toBe('inspect needs the name of a clip; yardhark inspect --help')
    expect(refusal('inspect', '--csv', '--json', clip('a.wav'))).toBe(
      '--csv and --json are both there; keep one of them',
    )
    expect(refusal('inspect', clip('A.WAV'))).toContain('The clip is not there; a.wav is.')
    expect(refusal('inspect', clip('bad.wav'))).toContain(`${clip('bad.wav')}: The clip cannot be read: `)
  })
})

describe('yardhark synth', () => {
  it('writes a test sweep that is a sweep folder, with the truth beside it', () => {
    expect(run('synth', '--list').stdout).toMatch(/^plain\n(?:[a-z-]+\n)+$/)
    const folder = join(folderWith({}), 'new')
    expect(run('synth', '--family', 'no-leak', '--seed', '7', '--out', folder)).toEqual({
      code: 0,
      stdout: '',
      stderr: '',
    })
    const { rows } = readSweepFolder(folder, { startM: null, spacingM: null })
    const names = readdirSync(folder)
    expect(rows.map(({ file }) => file).filter((file) => !names.includes(file))).toEqual([])
    expect(names).toEqual(expect.arrayContaining(['labels.csv', 'line.json', 'sweep.csv']))
  })

  it('refuses what it cannot make, and writes into no folder that holds something already', () => {
    expect(refusal('synth')).toBe('synth needs the folder to write into; add --out FOLDER')
    expect(refusal('synth', '--out', 'x', '--family', 'two-leeks')).toBe(
      'there is no family "two-leeks"; did you mean two-leaks?',
    )
    const folder = folderWith({ 'mine.txt': 'mine' })
    expect(refusal('synth', '--out', folder)).toContain(`${folder}: is not empty`)
    expect(readdirSync(folder)).toEqual(['mine.txt'])
  })
})
