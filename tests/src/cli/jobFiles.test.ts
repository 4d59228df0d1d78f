import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { opinionFile } from '../../../shared/opinion/opinionFile'
import { opinionOf } from '../../support/editedJob'
import { packed, smallJob } from '../../support/packedJob'
import { buildCli, folderWith, noiseClip, runCli } from '../../support/runCli'

let program = ''
beforeAll(async () => {
  program = await buildCli()
})

const SHEET = 'point,along_m,file,time\n1,0,1.wav,2026-05-01T08:00:00Z\n2,1.5,2.wav,2026-05-01T08:01:00Z\n'
const sweep = () => folderWith({ 'sweep.csv': SHEET, '1.wav': noiseClip(1.2), '2.wav': noiseClip(1.2, 0.2) })
const place = () => mkdtempSync(join(tmpdir(), 'yardhark-jobs-'))
const small = smallJob()

describe('yardhark pack', () => {
  it('makes the same file of the same folder, byte for byte, wherever the folder lies', () => {
    const folder = place()
    for (const name of ['a.zip', 'b.zip']) {
      const { code, stdout } = runCli(program, ['pack', sweep(), '--name', 'Alder Square', '--out', join(folder, name)])
      expect(code).toBe(0)
      expect(stdout).toContain('Alder Square: lines 1, points 2, clips 2, opinions 0.')
    }
    expect(Buffer.compare(readFileSync(join(folder, 'a.zip')), readFileSync(join(folder, 'b.zip')))).toBe(0)
  })

  it('packs an opened job file as it was, and part of it', async () => {
    const folder = place()
    const from = join(folder, 'job.zip')
    writeFileSync(from, await packed(small.job, small.beside))
    const some = runCli(program, [
      'pack',
      from,
      '--points',
      '1,3',
      '--without-customer',
      '--out',
      join(folder, 's.zip'),
    ])
    expect(some.code).toBe(0)
    const said = runCli(program, ['verify', join(folder, 's.zip')])
    expect(said.stdout).toContain('job-one: lines 1, points 2, clips 4, opinions 0.')
    expect(said.stdout).toContain('It was shared with the clips of some points only: 1, 3.')
    expect(said.stdout).toContain('It was shared without names, notes and photos.')
    expect(said.stdout).toContain('The file is whole: every digest fits.')
  })

  it('refuses what it cannot do, and writes over nothing unless told', () => {
    const folder = place()
    const refused = (...args: string[]) => {
      const { code, stdout, stderr } = runCli(program, args)
      expect({ code, stdout }).toEqual({ code: 2, stdout: '' })
      return stderr
    }
    expect(refused('pack')).toContain('pack takes one folder or job file')
    expect(refused('pack', sweep())).toContain('add --out job.zip')
    const out = join(folder, 'a.zip')
    expect(refused('pack', sweep(), '--out', out, '--points', 'six')).toContain('write numbers with commas between')
    expect(refused('pack', sweep(), '--out', out, '--points', '9')).toContain('names no point that has a clip')
    writeFileSync(out, 'mine')
    expect(refused('pack', sweep(), '--out', out)).toContain('is there already')
    expect(readFileSync(out, 'utf8')).toBe('mine')
    expect(refused('pack', sweep(), '--out', join(folder, 'no', 'a.zip'))).toContain('cannot be written')
  })
})

describe('yardhark open', () => {
  it('gives back the folder, clip for clip, and locate reads it', () => {
    const folder = place()
    const from = sweep()
    runCli(program, ['pack', from, '--out', join(folder, 'job.zip')])
    expect(runCli(program, ['open', join(folder, 'job.zip'), '--out', join(folder, 'job')]).code).toBe(0)
    for (const name of ['1.wav', '2.wav']) {
      expect(Buffer.compare(readFileSync(join(folder, 'job/line', name)), readFileSync(join(from, name)))).toBe(0)
    }
    const answers = [from, join(folder, 'job/line')].map((each) => runCli(program, ['locate', each, '--json']).stdout)
    expect(JSON.parse(answers[0]!)).toEqual(JSON.parse(answers[1]!))
  })

  it('names what is damaged and writes the rest', async () => {
    const folder = place()
    const bytes = await packed(small.job, small.beside)
    bytes[Math.floor(bytes.length / 2)]! ^= 1
    writeFileSync(join(folder, 'job.zip'), bytes)
    const { code, stdout } = runCli(program, ['open', join(folder, 'job.zip'), '--out', join(folder, 'job')])
    expect(code).toBe(0)
    expect(stdout).toMatch(/data\/clips\/\S+ is damaged or was changed/)
    expect(
      execFileSync('ls', [join(folder, 'job/line')], { encoding: 'utf8' })
        .trim()
        .split('\n'),
    ).toHaveLength(8)
  })
})

describe('yardhark verify', () => {
  it('ends with status 2 for a file that is not whole, and says why', async () => {
    const folder = place()
    const bytes = await packed(small.job, small.beside)
    writeFileSync(join(folder, 'short.zip'), bytes.subarray(0, bytes.length / 2))
    const { code, stdout } = runCli(program, ['verify', join(folder, 'short.zip')])
    expect(code).toBe(2)
    expect(stdout).toContain('The file breaks off before its end.')
    expect(stdout).toContain('The file is not whole.')
    writeFileSync(join(folder, 'letter.zip'), 'Dear Sir')
    const letter = runCli(program, ['verify', join(folder, 'letter.zip')])
    expect([letter.code, letter.stdout]).toEqual([2, ''])
    expect(letter.stderr).toContain('is no zip, or only its first bytes')
  })
})

describe('yardhark merge', () => {
  it('brings an opinion into a job file once, however often it comes', async () => {
    const folder = place()
    const [job, opinion, once, twice] = ['job.zip', 'o.json', 'once.zip', 'twice.zip'].map((name) => join(folder, name))
    writeFileSync(job!, await packed(small.job, small.beside))
    writeFileSync(opinion!, opinionFile(small.job, [opinionOf('o-1')]))
    const first = runCli(program, ['merge', job!, opinion!, '--out', once!])
    expect(first.code).toBe(0)
    expect(first.stdout).toContain('joined: opinions 1, clips 0, places where the copies differ 0.')
    const second = runCli(program, ['merge', once!, opinion!, job!, '--out', twice!])
    expect(second.stdout.match(/held nothing new/g)).toHaveLength(2)
    expect(Buffer.compare(readFileSync(once!), readFileSync(twice!))).toBe(0)
    expect(runCli(program, ['verify', once!]).stdout).toContain('office gave an opinion that nobody signed.')
  })

  it('refuses opinions of another job', async () => {
    const folder = place()
    writeFileSync(join(folder, 'job.zip'), await packed(small.job, small.beside))
    writeFileSync(join(folder, 'o.json'), opinionFile({ id: 'x' }, [opinionOf('o', { jobId: 'x' })]))
    const { code, stderr } = runCli(program, [
      'merge',
      join(folder, 'job.zip'),
      join(folder, 'o.json'),
      '--out',
      'x.zip',
    ])
    expect(code).toBe(2)
    expect(stderr).toContain('holds opinions of another job; open that job first')
  })
})
