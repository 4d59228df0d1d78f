import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020'
import { beforeAll, describe, expect, it } from 'vitest'
import type { AnswerJson } from '../../../shared/answer/answerJson'
import { brokenRules } from '../../schema/answerRules'
import { buildCli, folderWith, noiseClip, runCli } from '../../support/runCli'

const root = resolve(import.meta.dirname, '../../..')
const schema = JSON.parse(readFileSync(join(root, 'tests/schema/answer.schema.json'), 'utf8'))
const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true }).compile(schema)

let program = ''
beforeAll(async () => {
  program = await buildCli()
})

const CLIP = noiseClip(2)
const CLIPS = { '1.wav': CLIP, '2.wav': CLIP, '3.wav': CLIP }
const HEADER = 'point,along_m,file'
const SHEET = `${HEADER}\n1,0,1.wav\n2,1,2.wav\n3,2,3.wav\n`

/** What is promised of every wrong folder: status 2, nothing on standard output, one line on standard error. */
const refusal = (...args: string[]): string => {
  const { code, stdout, stderr } = runCli(program, ['locate', ...args])
  expect({ code, stdout }, stderr).toEqual({ code: 2, stdout: '' })
  expect(stderr).toMatch(/^yardhark: [^\n]+\n$/)
  return stderr.slice('yardhark: '.length, -1)
}

/** The answer to a folder, which must keep the schema and the rules no schema can say. */
const answer = (...args: string[]): AnswerJson => {
  const { code, stdout, stderr } = runCli(program, ['locate', '--json', ...args])
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
  const json = JSON.parse(stdout) as AnswerJson
  expect(stdout).toBe(`${JSON.stringify(json)}\n`)
  expect(validate(json), JSON.stringify(validate.errors)).toBe(true)
  expect(brokenRules(json)).toEqual([])
  return json
}

describe('yardhark locate on the demo job', () => {
  const demo = join(root, 'demo-audio')

  it('gives an answer that keeps the schema, the spoilt clip set aside and named', () => {
    const json = answer(demo)
    const spoilt = readFileSync(join(demo, 'labels.csv'), 'utf8').match(/^([^,\n]+),spoilt/m)![1]
    expect(json.clips.filter((clip) => !clip.used).map((clip) => clip.file)).toEqual([spoilt])
    expect(json.points).toHaveLength(new Set(json.points.map(({ point }) => point)).size)
    expect(json.confirmed).toBe(false)
  })

  it('shows the same on a page: verdict, sketch, reasons, points, and no progress in a pipe', () => {
    const { code, stdout, stderr } = runCli(program, ['locate', demo, '--feet'])
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    expect(stdout).toMatch(/^(?:Located|Unsure|No leak heard)/)
    expect(stdout).toMatch(/^ {2}-+[:=%#]+-+$/m)
    expect(stdout).toMatch(/^Why$/m)
    expect(stdout).toMatch(/along ft/)
    expect(stdout).not.toMatch(/\d m\b/)
    expect(stdout).toMatch(/^[\n\x20-\x7e]*$/)
    expect(stdout.split('\n').filter((line) => line.length > 100)).toEqual([])
  })
})

describe('yardhark locate without a sheet', () => {
  it('places numbered clips by spacing in feet, and shows a hostile name without obeying it', () => {
    const folder = folderWith({ '3.wav': CLIP, '04-on.wav': CLIP, '5.WAV': CLIP, 'x\u001b[2J.wav': CLIP })
    const along = new Map(answer(folder, '--spacing-ft', '10').points.map(({ point, along_m }) => [point, along_m]))
    expect([along.get(3), along.get(4)]).toEqual([0, 3.048])
    const { stdout } = runCli(program, ['locate', folder, '--spacing', '1'])
    expect(stdout).not.toContain('\u001b')
    expect(stdout.replaceAll(/\n +/g, ' ')).toContain('x\\u001b[2J.wav was left out')
  })
})

describe('a clip that cannot be used is set aside and named, and the rest is answered', () => {
  it('missing, broken, empty, a pipe', () => {
    const names = ['gone', 'broken', 'empty', 'pipe']
    const rows = names.map((name, i) => `${i + 4},${i + 3},${name}.wav\n`).join('')
    const folder = folderWith({ ...CLIPS, 'sweep.csv': SHEET + rows, 'broken.wav': 'RIFF no wave', 'empty.wav': '' })
    execFileSync('mkfifo', [join(folder, 'pipe.wav')])
    const json = answer(folder)
    const keys = names.map((name) => json.clips.find((clip) => clip.file === `${name}.wav`)!.problems[0]!.key)
    expect(keys).toEqual(['missing_file', 'unreadable', 'unreadable', 'file_not_regular'])
    expect(json.clips.filter((clip) => clip.used).map((clip) => clip.file)).toEqual(['1.wav', '2.wav', '3.wav'])
  })

  it('and when none is left, the answer is unsure with the points still ranked', () => {
    const folder = folderWith({ '1.wav': 'x', '2.wav': 'y', 'sweep.csv': SHEET })
    const json = answer(folder)
    expect(json).toMatchObject({ verdict: 'unsure', sources: [] })
    expect(json.points.map(({ point, rank }) => [point, rank])).toEqual([
      [1, 1],
      [2, 2],
      [3, 3],
    ])
  })
})

describe('yardhark locate refuses with status 2', () => {
  it('a call, a folder, a sheet and a line that must be mended first', () => {
    expect(refusal()).toBe('locate needs the folder with the clips; yardhark locate --help')
    expect(refusal('')).toBe('locate needs the folder with the clips; yardhark locate --help')
    expect(refusal('a', 'b')).toBe('locate takes one folder; leave out the second')
    expect(refusal('/no/such/folder')).toBe('/no/such/folder: there is no such folder; check the name')
    const clips = folderWith(CLIPS)
    expect(refusal(clips, '--spacing', '-1')).toBe('--spacing is -1; a length from 0.01 m to 1000 m is expected')
    const sheet = folderWith({ ...CLIPS, 'sweep.csv': `${HEADER}\n1,"\u001b[2J\n",1.wav\n` })
    expect(refusal(sheet, '--json')).toBe(
      `${sheet}/sweep.csv, row 2, along_m: is "\\u001b[2J"; write a number, like 3.5`,
    )
    const large = folderWith({ ...CLIPS, 'sweep.csv': SHEET, 'line.json': ' '.repeat(4_000_001) })
    expect(refusal(large)).toBe(
      `${large}/line.json: is larger than 4 MB, and no sheet or line is; check that it is the right file`,
    )
    const line = folderWith({ ...CLIPS, 'sweep.csv': SHEET, 'line.json': '['.repeat(200_000) })
    expect(refusal(line)).toBe(
      `${line}/line.json, line 1: lists and objects are nested more than 32 deep; make it flatter`,
    )
  })
})

describe('what a phone said against its recording', () => {
  it('makes the clip weak, and is told with it', () => {
    const sheet = `${HEADER},processing,ended_by\n1,0,1.wav,,\n2,1,2.wav,gain noise,\n3,2,3.wav,,killed\n`
    const { clips } = answer(folderWith({ ...CLIPS, 'sweep.csv': sheet }))
    const told = clips.map(({ problems }) =>
      problems.map(({ key }) => key).filter((key) => /^(?:phone|ended)_/.test(key)),
    )
    expect(told).toEqual([[], ['phone_noise_on', 'phone_gain_on'], ['ended_killed']])
  })
})
