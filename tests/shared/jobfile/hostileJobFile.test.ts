import { deflateSync, unzipSync, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { FormatError } from '../../../shared/base/errors'
import type { Job } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import { readJob } from '../../../shared/job/readJob'
import { crc32 } from '../../../shared/jobfile/crc32'
import { openJobFile } from '../../../shared/jobfile/openJobFile'
import { JOB_FILE_VERSION } from '../../../shared/jobfile/planJobFile'
import { readZipFile } from '../../../shared/jobfile/readZipFile'
import { centralDirectory, localHeader, type ZippedFile } from '../../../shared/jobfile/zipWriting'
import { wordsOf } from '../../../shared/words/sentence'
import { opinionOf } from '../../support/editedJob'
import { type Beside, digest, packed, smallJob, sourceOf } from '../../support/packedJob'

const BASE = 'Alder-Square-fountain/'
const JOB = `${BASE}data/job.json`
const MANIFEST = `${BASE}manifest-sha256.txt`

async function open(bytes: Uint8Array) {
  const kept: Beside = new Map()
  const file = await openJobFile(sourceOf(bytes), 'job.zip', {
    digest,
    keep: async ({ sha256, bytes: each }) => void kept.set(sha256, each),
    onDone: () => undefined,
  })
  return { ...file, kept }
}

/** What a person reads of the problems. */
const said = ({ problems }: { problems: readonly { key: string; values: Record<string, never> | object }[] }) =>
  problems.map((problem) => wordsOf(problem as never).text)

const small = smallJob()
const whole = await packed(small.job, small.beside)
const files = () => unzipSync(whole)

/** A zip by another program, of files that may be anything; manifests are made to fit unless `asTheyAre`. */
async function zipOf(changed: Record<string, Uint8Array>, asTheyAre = false): Promise<Uint8Array> {
  const all: Record<string, Uint8Array> = { ...changed }
  if (!asTheyAre) {
    const payload = Object.keys(all).filter((path) => path.startsWith(`${BASE}data/`))
    const rows = await Promise.all(
      payload.map(async (path) => `${await digest(all[path]!)}  ${path.slice(BASE.length)}\n`),
    )
    all[MANIFEST] = text(rows.join(''))
    delete all[`${BASE}tagmanifest-sha256.txt`]
    delete all[`${BASE}bag-info.txt`]
  }
  return zipSync(all, { level: 0 })
}

const text = (content: string) => new TextEncoder().encode(content)
const clipNames = Object.keys(files()).filter((name) => name.includes('/clips/'))

/** Entries as they are given, however they lie. */
function rawZip(entries: readonly { readonly file: ZippedFile; readonly bytes: Uint8Array }[]): Uint8Array {
  const parts = entries.flatMap(({ file, bytes }) => [localHeader(file), bytes])
  return Uint8Array.from(Buffer.concat([...parts, centralDirectory(entries.map(({ file }) => file))]))
}

function entry(path: string, bytes: Uint8Array, lies: Partial<ZippedFile> = {}) {
  const file = { path, crc: crc32(bytes), bytes: bytes.length, packedBytes: bytes.length, deflated: false, ...lies }
  return { file, bytes }
}

describe('a damaged job file', () => {
  it('opens with a byte flipped in a clip: that clip is named, the rest is there', async () => {
    const bytes = whole.slice()
    const at = bytes.length / 2
    bytes[Math.floor(at)]! ^= 1
    const file = await open(bytes)
    expect(file.kept.size).toBe(small.beside.size - 1)
    expect(said(file)[0]).toMatch(
      /^data\/clips\/0\d-o\w+-[0-9a-f]{16}\.wav is damaged or was changed: .*ask for the file again\.$/,
    )
    expect(jobJson(file.job)).toEqual(jobJson(small.job))
  })

  it('never gives wrong bytes, whichever byte is flipped', async () => {
    // Closest in headers, texts and list; the sounds are all alike to the reader.
    const right = JSON.stringify(jobJson(small.job))
    const texts = files()
    const headBytes = Object.entries(texts)
      .slice(0, 5)
      .reduce((sum, [name, each]) => sum + 30 + name.length + each.length, 0)
    const tail = whole.length - 2500
    let refused = 0
    for (let at = 0; at < whole.length; at += at < 1500 || at > tail ? 31 : at < headBytes ? 97 : 1999) {
      const bytes = whole.slice()
      bytes[at]! ^= 0x10
      try {
        const file = await open(bytes)
        for (const [sha256, each] of file.kept) {
          expect(Buffer.compare(each, small.beside.get(sha256)!)).toBe(0)
        }
        expect(JSON.stringify(jobJson(file.job))).toBe(right)
        if (file.kept.size < small.beside.size) expect(file.problems.length).toBeGreaterThan(0)
      } catch (error) {
        expect((error as Error).name).toBe('FormatError')
        refused++
      }
    }
    expect(refused).toBeGreaterThan(10)
  })

  it('opens as far as it goes when it breaks off', async () => {
    const file = await open(whole.slice(0, Math.floor(0.6 * whole.length)))
    expect(file.kept.size).toBeGreaterThan(1)
    expect(file.kept.size).toBeLessThan(small.beside.size)
    expect(said(file)[0]).toBe('The file breaks off before its end.')
    expect(jobJson(file.job)).toEqual(jobJson(small.job))
  })

  it('is refused in words wherever it breaks off before the job itself', async () => {
    for (const length of [0, 1, 4, 21, 22, 30, 100, 500, 1200]) {
      await expect(open(whole.slice(0, length))).rejects.toThrow(/^job\.zip.*(?:ask for the file again|opened as such)/)
    }
  })

  it('names a file that is missing and one that nobody vouches for, and opens the rest', async () => {
    const all = files()
    delete all[clipNames[2]!]
    all[`${BASE}data/clips/more.wav`] = text('RIFF of a stranger')
    const file = await open(await zipOf(all, true))
    expect(file.kept.size).toBe(small.beside.size - 1)
    const sentences = said(file)
    expect(sentences).toContain(`${clipNames[2]!.slice(BASE.length)} is missing.`)
    expect(sentences).toContain('data/clips/more.wav stands in no manifest, so nobody vouches for it; it was left out.')
    expect(sentences).toContain('The sound of 02-off.wav did not come with it.')
  })

  it('leaves out what belongs to nothing in the job, although the manifest has it', async () => {
    const file = await open(await zipOf({ ...files(), [`${BASE}data/program.exe`]: text('MZ') }))
    expect(said(file)).toEqual(['data/program.exe belongs to nothing in the job; it was left out.'])
    expect(file.kept.size).toBe(small.beside.size)
  })
})

describe('a hostile job file', () => {
  it('with two files of one name uses neither', async () => {
    const clip = clipNames[0]!
    const other = clip.replace('.wav', '.wax')
    const bytes = await zipOf({ ...files(), [other]: text('another') })
    const [from, to] = [Buffer.from(other), Buffer.from(clip)]
    const twice = Buffer.from(bytes)
    for (let at = twice.indexOf(from); at >= 0; at = twice.indexOf(from)) to.copy(twice, at)
    const file = await open(Uint8Array.from(twice))
    const name = clip.slice(BASE.length)
    expect(said(file)).toContain(`${name} was left out: stands in it twice; ask for the file again.`)
    expect(file.kept.size).toBeLessThan(small.beside.size)
  })

  it.each(['../evil.wav', 'data/../../evil.wav', '/etc/evil', 'C:/evil', 'data\\evil', 'data/./evil', 'data//evil'])(
    'with the path %s leaves it out and opens the rest',
    async (path) => {
      const name = path.startsWith('data') ? BASE + path : path
      const file = await open(await zipOf({ ...files(), [name]: text('evil') }, true))
      expect(file.kept.size).toBe(small.beside.size)
      expect(said(file).filter((sentence) => sentence.includes('was left out: '))).toHaveLength(1)
    },
  )

  it('with a bomb of a gigabyte leaves it out, unpacking nothing of it', async () => {
    const bomb = deflateSync(new Uint8Array(2e6))
    const parts = Object.entries(files()).map(([path, bytes]) => entry(path, bytes))
    const told = entry(`${BASE}data/bomb.wav`, bomb, { bytes: 1e9, deflated: true })
    const file = await open(rawZip([...parts, told]))
    expect(file.kept.size).toBe(small.beside.size)
    expect(said(file)).toContain('data/bomb.wav was left out: is larger than 100 MB unpacked; no part of a job is.')
  })

  it('with a header that tells of less than there is stops at what was told', async () => {
    const million = new Uint8Array(1e6)
    const packedMillion = deflateSync(million)
    const lying = entry('lies.bin', packedMillion, {
      bytes: 5000,
      deflated: true,
      crc: crc32(million.subarray(0, 5000)),
    })
    const zip = rawZip([lying])
    const listed = { ...lying.file, method: 8, headerAt: 0, trouble: null }
    await expect(readZipFile(sourceOf(zip), listed, 'job.zip')).rejects.toThrow('was damaged on its way')
  })

  it('with files that lie over one another is refused', async () => {
    const parts = Object.entries(files()).map(([path, bytes]) => entry(path, bytes))
    const zip = rawZip(parts)
    const view = new DataView(zip.buffer)
    const directoryAt = view.getUint32(zip.length - 6, true)
    const second = directoryAt + 46 + parts[0]!.file.path.length
    view.setUint32(second + 42, 0, true) // the second file is said to lie where the first one does
    await expect(open(zip)).rejects.toThrow('holds files that lie over one another')
  })

  it('with a hundred thousand entries is refused before they are listed', async () => {
    const zip = whole.slice()
    new DataView(zip.buffer).setUint16(zip.length - 12, 0xffff, true)
    await expect(open(zip)).rejects.toThrow('holds more than 20000 files')
    const names = Array.from({ length: 20_500 }, (_, i) => [`${BASE}data/${i}`, new Uint8Array()] as const)
    await expect(open(zipSync(Object.fromEntries(names)))).rejects.toThrow('holds more than 20000 files')
  })

  it('with 15 000 files that nobody vouches for names some of them and counts the rest', async () => {
    const names = Array.from({ length: 15_000 }, (_, i) => [`${BASE}data/${i}`, new Uint8Array()] as const)
    const file = await open(await zipOf({ ...files(), ...Object.fromEntries(names) }, true))
    expect(file.problems.length).toBeLessThan(30)
    expect(said(file)).toContain('There are 14980 more such files.')
    expect(file.kept.size).toBe(small.beside.size)
  })

  it('of a newer version, of the job or of the file, says so', async () => {
    const newer = JSON.stringify({ ...jobJson(small.job), schema_version: 99 })
    await expect(open(await zipOf({ ...files(), [JOB]: text(newer) }))).rejects.toThrow(
      'job.zip, data/job.json, schema_version: is 99, from a newer version of the program; open it there, or update this one',
    )
    const info = `${BASE}bag-info.txt`
    const tag = `${BASE}tagmanifest-sha256.txt`
    const all = files()
    delete all[tag]
    const later = text(
      Buffer.from(all[info]!)
        .toString()
        .replace('Job-File: 1', `Job-File: ${JOB_FILE_VERSION + 1}`),
    )
    await expect(open(await zipOf({ ...all, [info]: later }, true))).rejects.toThrow(
      'from a newer version of the program',
    )
  })

  it('keeps markup and marks that turn text round as the plain text they are', async () => {
    const evil = '<img src=x onerror=alert(1)>\u202eevil'
    const job: Job = {
      ...small.job,
      name: evil,
      lines: small.job.lines.map((line) => ({ ...line, name: evil })),
    }
    const bytes = await packed(job, small.beside)
    expect((await open(bytes)).job.name).toBe(evil)
    expect(Object.keys(unzipSync(bytes))[0]).toBe('img-src-x-onerror-alert-1-evil/bagit.txt')
    const all = files()
    const odd = await open(await zipOf({ ...all, [`${BASE}data/${evil.replaceAll('/', '')}.wav`]: text('x') }, true))
    expect(said(odd)[0]).toContain('\\u202e')
  })

  it('keeps or refuses them in every text of a job and of its opinions, and never anything else', async () => {
    const evil = '<script>alert(1)</script>\u202e\u2066'
    const seen = { answer: false, opinions: false, shuffled: false, heard: [] }
    const whole: Job = {
      ...small.job,
      opinions: [
        opinionOf('o', {
          seen,
          note: 'n',
          again: [{ point: 1, note: 'n' }],
          comments: [{ clip: 'a'.repeat(64), atS: 1, text: 't' }],
        }),
      ],
    }
    const json = jobJson(whole) as unknown
    const paths = textPaths(json, [])
    expect(paths.length).toBeGreaterThan(50)
    let kept = 0
    for (const path of paths) {
      const changed = withText(json, path, evil)
      try {
        const back = jobJson(readJob(changed, 'job.json')) as unknown
        expect(textAt(back, path)).toBe(evil)
        kept++
      } catch (error) {
        if (!(error instanceof FormatError)) throw error
        // A message shows no mark that turns the writing round.
        expect(error.message).not.toMatch(/[\u202e\u2066]/)
      }
    }
    expect(kept).toBeGreaterThan(15)
  })

  it('with a photo that is none leaves it out', async () => {
    const { job, beside } = smallJob()
    const markup = text('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>')
    const line = job.lines[0]!
    const sha256 = await digest(markup)
    beside.set(sha256, markup)
    const photo = { sha256, bytes: markup.length }
    const odd: Job = { ...job, lines: [{ ...line, found: line.found!.map((each) => ({ ...each, photo })) }] }
    const file = await open(await packed(odd, beside))
    expect(file.kept.has(sha256)).toBe(false)
    expect(said(file)[0]).toMatch(/^data\/photos\/[0-9a-f]{16}\.bin is no photo; it was left out\.$/)
  })

  it('that is no zip at all, or a zip of something else, says so', async () => {
    await expect(open(text('this is a letter'))).rejects.toThrow('job.zip: is no zip, or only its first bytes')
    await expect(open(zipSync({ 'a.txt': text('a') }))).rejects.toThrow('job.zip: holds no bagit.txt')
    const two = { ...files(), ...Object.fromEntries(Object.entries(files()).map(([name, each]) => [`b${name}`, each])) }
    await expect(open(zipSync(two))).rejects.toThrow('job.zip: holds 2 jobs; pack each by itself')
  })
})

type Path = readonly (string | number)[]

/** Where texts stand in plain data. */
function textPaths(value: unknown, at: Path): Path[] {
  if (typeof value === 'string') return [at]
  if (typeof value !== 'object' || value === null) return []
  const keys = Array.isArray(value) ? value.map((_, i) => i) : Object.keys(value)
  return keys.flatMap((key) => textPaths((value as Record<string | number, unknown>)[key], [...at, key]))
}

function textAt(value: unknown, path: Path): unknown {
  return path.reduce((part, key) => (part as Record<string | number, unknown>)[key], value)
}

function withText(value: unknown, [key, ...rest]: Path, text: string): unknown {
  if (key === undefined) return text
  const changed = (Array.isArray(value) ? [...value] : { ...(value as object) }) as Record<string | number, unknown>
  changed[key] = withText(changed[key], rest, text)
  return changed
}
