import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { CAUTIONS } from '../../../shared/job/cautions'
import { jobJson } from '../../../shared/job/jobJson'
import { readJob } from '../../../shared/job/readJob'
import { WORDS } from '../../../shared/words/words'
import { buildCli, folderWith, runCli } from '../../support/runCli'

const demo = resolve(import.meta.dirname, '../../../demo-audio')
const work = mkdtempSync(join(tmpdir(), 'yardhark-report-'))
const packed = join(work, 'demo.zip')
let program = ''
const run = (...args: string[]) => runCli(program, args)
const plain = (text: string) => text.replace(/\s+/g, ' ')

beforeAll(async () => {
  program = await buildCli()
  expect(run('pack', demo, '--out', packed).code).toBe(0)
})

describe('yardhark report', () => {
  it('tells of an open job file what its clips say now, that nobody confirmed it, and every caution', () => {
    const { code, stdout, stderr } = run('report', packed, '--office')
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    const text = plain(stdout)
    expect(text).toContain('The leak was located')
    expect(text).toContain('Not confirmed by ear.')
    expect(text).toContain('The job is not closed yet.')
    for (const key of Object.values(CAUTIONS).flat()) expect(text).toContain(WORDS[key].text)
  })

  it('writes one page that asks nobody for anything, and does not write over a file', () => {
    const file = join(work, 'report.html')
    expect(run('report', packed, '--html', file)).toEqual({ code: 0, stdout: '', stderr: '' })
    const html = readFileSync(file, 'utf8')
    expect(html.match(/<svg class="spectrum"/g)).toHaveLength(14)
    expect(html).toMatch(/<svg class="sketch"/)
    expect(html).not.toMatch(/<script|https?:|<link|@import|NaN|undefined/)
    const again = run('report', packed, '--html', file)
    expect(again.code).toBe(2)
    expect(again.stderr).toContain('is there already')
    expect(run('report', packed, '--html', file, '--force').code).toBe(0)
  })

  it('of a job.json whose clips are elsewhere tells what it can; markup in it stays text', () => {
    const unpacked = join(work, 'unpacked')
    expect(run('open', packed, '--out', unpacked).code).toBe(0)
    const job = readJob(readFileSync(join(unpacked, 'job.json'), 'utf8'), 'job.json')
    const [line] = job.lines
    const complaint = { said: '<img src=x onerror=alert(1)>', ruledOut: [], isolation: '', waterPasses: null }
    const told = { ...job, lines: [{ ...line!, complaint }] }
    const folder = folderWith({ 'job.json': JSON.stringify(jobJson(told)) })
    expect(plain(run('report', folder).stdout)).toContain('still being worked out')
    const file = join(folder, 'r.html')
    expect(run('report', join(folder, 'job.json'), '--html', file).code).toBe(0)
    const html = readFileSync(file, 'utf8')
    expect(html).not.toContain('<img src=x')
    expect(html).toContain('&#60;img src=x onerror=alert(1)&#62;')
  })

  it('of what is no job says so in one line', () => {
    for (const args of [[], ['nowhere.zip'], [folderWith({ 'a.txt': 'x' })], [packed, packed]]) {
      const { code, stdout, stderr } = run('report', ...args)
      expect({ code, stdout }, stderr).toEqual({ code: 2, stdout: '' })
      expect(stderr).toMatch(/^yardhark: [^\n]+\n$/)
    }
  })
})
