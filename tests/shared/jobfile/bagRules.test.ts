import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { bagInfoText, manifestText } from '../../../shared/jobfile/bagTexts'
import { crc32 } from '../../../shared/jobfile/crc32'
import { checkDeclaration, readBagInfo, readManifest } from '../../../shared/jobfile/readBagTexts'
import reference from '../../reference/jobFileReference.json'
import { digest, packed, smallJob } from '../../support/packedJob'
import { fetchPackage } from '../../support/realSounds/fetchPackage'

const small = smallJob()
const zip = await packed(small.job, small.beside)
const BASE = 'Alder-Square-fountain/'
const bag = Object.fromEntries(
  Object.entries(unzipSync(zip)).map(([name, bytes]) => [name.slice(BASE.length), bytes] as const),
)
const textOf = (name: string) => Buffer.from(bag[name]!).toString('utf8')
const SUM = 'a'.repeat(64)
const isPayload = (path: string) => path.startsWith('data/')

/** The rules of RFC 8493 by their sections. [RFC8493] */
describe('a bag as we write it', () => {
  it('2.1.1: declares version and encoding in two lines, without a byte order mark', () => {
    expect(textOf('bagit.txt')).toBe('BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n')
  })

  it('2.1.2: has its payload in data/', () => {
    const tags = Object.keys(bag).filter((name) => !name.startsWith('data/'))
    expect(tags.sort()).toEqual(['bag-info.txt', 'bagit.txt', 'manifest-sha256.txt', 'tagmanifest-sha256.txt'])
  })

  it('2.1.3: lists every payload file in the manifest once, and nothing else, with the digest of its bytes', async () => {
    const rows = textOf('manifest-sha256.txt').trimEnd().split('\n')
    const expected = await Promise.all(
      Object.keys(bag)
        .filter(isPayload)
        .map(async (name) => `${await digest(bag[name]!)}  ${name}`),
    )
    expect(rows.sort()).toEqual(expected.sort())
  })

  it('2.1.3: writes line ends and per cent signs of names as %0A, %0D and %25, and nothing else so', () => {
    const path = 'data/50%\r\nof it ü.wav'
    expect(manifestText([{ path, sha256: SUM }])).toBe(`${SUM}  data/50%25%0D%0Aof it ü.wav\n`)
    expect(readManifest(manifestText([{ path, sha256: SUM }]), isPayload).files).toEqual([{ path, sha256: SUM }])
  })

  it('2.2.1: lists the other texts in the tag manifest, and no payload and no tag manifest', async () => {
    const expected = await Promise.all(
      ['bag-info.txt', 'bagit.txt', 'manifest-sha256.txt'].map(
        async (name) => `${await digest(bag[name]!)}  ${name}\n`,
      ),
    )
    expect(textOf('tagmanifest-sha256.txt')).toBe(expected.join(''))
  })

  it('2.2.2: tells the date of the last change, and bytes and number of the payload', () => {
    const info = readBagInfo(textOf('bag-info.txt'))
    const payload = Object.keys(bag).filter(isPayload)
    expect(info.get('bagging-date')).toBe('2026-09-21')
    expect(info.get('payload-oxum')).toBe(
      `${payload.reduce((sum, name) => sum + bag[name]!.length, 0)}.${payload.length}`,
    )
  })

  it('4: has one folder at the top, so that unpacking it makes one entry', () => {
    expect(Object.keys(unzipSync(zip)).every((name) => name.startsWith(BASE))).toBe(true)
  })
})

describe('a bag as we read it', () => {
  it.each([
    'BagIt-Version: 1.0\r\nTag-File-Character-Encoding: UTF-8\r\n',
    'BagIt-Version: 0.97\nTag-File-Character-Encoding: utf-8',
  ])('2.1.1: may be declared as %j', (text) => {
    expect(() => checkDeclaration(text, 'job.zip')).not.toThrow()
  })

  it.each([
    ['', 'does not say that this is a bag'],
    ['BagIt-Version: 1.0\n', 'does not say that this is a bag'],
    ['BagIt-Version: 2.0\nTag-File-Character-Encoding: UTF-8\n', 'is of BagIt 2.0'],
    ['BagIt-Version: 1.0\nTag-File-Character-Encoding: ISO-8859-1\n', 'says that its texts are "ISO-8859-1"'],
    ['Tag-File-Character-Encoding: UTF-8\nBagIt-Version: 1.0\n', 'does not say that this is a bag'],
  ])('2.1.1: declared as %j is refused', (text, why) => {
    expect(() => checkDeclaration(text, 'job.zip')).toThrow(why)
  })

  it.each([
    [`${SUM} data/a.wav`, 'data/a.wav'],
    [`${SUM}\tdata/a.wav`, 'data/a.wav'],
    [`${SUM.toUpperCase()}  data/a.wav`, 'data/a.wav'],
    [`${SUM} *data/a.wav`, 'data/a.wav'],
    [`${SUM}  ./data/a.wav`, 'data/a.wav'],
    [`${SUM}  data/with a space.wav`, 'data/with a space.wav'],
    [`${SUM}  data/50%25.wav\r`, 'data/50%.wav'],
  ])('2.1.3: takes the row %j', (row, path) => {
    expect(readManifest(`${row}\n`, isPayload)).toEqual({ files: [{ path, sha256: SUM }], oddRows: [] })
  })

  it.each([
    `${SUM.slice(1)}  data/a.wav`,
    `${SUM}data/a.wav`,
    `${SUM}  `,
    `${SUM}  ../a.wav`,
    `${SUM}  data/../../a.wav`,
    `${SUM}  /data/a.wav`,
    `${SUM}  bagit.txt`,
    `${SUM}  data\\a.wav`,
  ])('2.1.3: does not take the row %j', (row) => {
    expect(readManifest(`${SUM}  data/first.wav\n${row}\n`, isPayload).oddRows).toEqual([2])
  })

  it('2.1.3: does not take a file twice with two digests', () => {
    const twice = readManifest(`${SUM}  data/a.wav\n${'b'.repeat(64)}  data/a.wav\n`, isPayload)
    expect(twice).toEqual({ files: [{ path: 'data/a.wav', sha256: SUM }], oddRows: [2] })
  })

  it('2.2.2: reads labels of any case, and values that go on in the next line', () => {
    const info = readBagInfo('Bagging-Date: 2026-09-21\r\nNote : one\r\n  two\r\n\tthree\r\nno label\r\n')
    expect([...info]).toEqual([
      ['bagging-date', '2026-09-21'],
      ['note', 'one two three'],
    ])
    expect([...readBagInfo(bagInfoText([['A', 'b']]))]).toEqual([['a', 'b']])
  })
})

describe('other programs', () => {
  it('agree on the check sum of zip: 0xCBF43926 for "123456789" [APPNOTE636]', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926)
  })

  it("Info-ZIP's unzip finds no error and unpacks one folder, in which sha256sum -c finds every file good", async () => {
    const unzip = join(await fetchPackage('unzip'), 'usr/bin/unzip')
    const folder = mkdtempSync(join(tmpdir(), 'yardhark-bag-'))
    writeFileSync(join(folder, 'job.zip'), zip)
    expect(execFileSync(unzip, ['-t', 'job.zip'], { cwd: folder, encoding: 'utf8' })).toContain('No errors detected')
    execFileSync(unzip, ['-q', 'job.zip'], { cwd: folder })
    expect(readdirSync(folder).sort()).toEqual(['Alder-Square-fountain', 'job.zip'])
    const check = (file: string) =>
      execFileSync('sha256sum', ['-c', '--strict', file], { cwd: join(folder, BASE), encoding: 'utf8' })
    const rows = check('manifest-sha256.txt').trimEnd().split('\n')
    expect(rows).toHaveLength(Object.keys(bag).filter(isPayload).length)
    expect(rows.every((row) => row.endsWith(': OK'))).toBe(true)
    expect(check('tagmanifest-sha256.txt').trimEnd().split('\n')).toHaveLength(3)
  })

  it("see the same: Python's zipfile, sox and ffmpeg read this very file", async () => {
    expect(reference.zip_sha256).toBe(await digest(zip))
    expect(reference.zipfile_damaged).toBeNull()
    expect(reference.zipfile_names).toEqual(Object.keys(unzipSync(zip)))
    const clips = Object.entries<(typeof reference.clips)['01-on-95f546e55a9d1549.wav']>(reference.clips)
    expect(clips).toHaveLength(6)
    for (const [name, seen] of clips) {
      const clip = small.job.lines[0]!.sweeps[0]!.clips.find(({ sound }) => name.includes(sound!.sha256.slice(0, 16)))!
      const sound = small.beside.get(clip.sound!.sha256)!.subarray(44)
      expect(seen.sox_sha256).toBe(await digest(sound))
      expect(seen.ffmpeg_sha256).toBe(seen.sox_sha256)
      expect(seen.ffmpeg_tags.comment).toBe(
        `point ${clip.row.point}, ${clip.row.alongM} m along, air ${clip.row.air}, take 1`,
      )
      expect(seen.ffmpeg_tags.date).toBe('2026-09-21')
      expect(seen.ffmpeg_tags.coding_history).toBe('A=PCM,F=8000,W=16,M=mono\r\n')
    }
  })
})
