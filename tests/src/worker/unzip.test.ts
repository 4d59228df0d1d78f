import { strToU8, type Zippable, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import type { UnzippedFile } from '../../../src/worker/protocol'
import { unzip } from '../../../src/worker/unzip'

const blob = (bytes: Uint8Array) => new Blob([bytes as BlobPart])
const zip = (files: Zippable) => zipSync(files, { level: 6 })

async function unzipped(bytes: Uint8Array): Promise<Record<string, string>> {
  const files: UnzippedFile[] = []
  await unzip(blob(bytes), 'walk.zip', (file) => files.push(file))
  return Object.fromEntries(files.map(({ path, bytes: content }) => [path, new TextDecoder().decode(content)]))
}

/** The same zip with another 4-byte number in every central header, at an offset of its own. */
function withField(bytes: Uint8Array, offset: number, value: number): Uint8Array {
  const changed = bytes.slice()
  const view = new DataView(changed.buffer)
  for (let at = 0; at + 46 <= changed.length; at++) {
    if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + offset, value, true)
  }
  return changed
}
const PACKED_SIZE = 20 // PKWARE APPNOTE 4.3.12, central directory header
const PLAIN_SIZE = 24

describe('a zip', () => {
  it('gives its files, without folders and what packing programs leave in it', async () => {
    const bytes = zip({
      'walk/sweep.csv': strToU8('point,along_m,file'),
      'walk/clips/1.wav': strToU8('RIFF'),
      'walk/empty/': new Uint8Array(),
      '__MACOSX/walk/._1.wav': strToU8('x'),
      'walk/.DS_Store': strToU8('x'),
    })
    expect(await unzipped(bytes)).toEqual({ 'walk/sweep.csv': 'point,along_m,file', 'walk/clips/1.wav': 'RIFF' })
  })

  it.each([
    ['leaves the folder', { '../evil.wav': strToU8('x') }, 'leaves the folder'],
    ['is absolute', { '/etc/x.wav': strToU8('x') }, 'absolute'],
    ['has a backslash', { 'a\\b.wav': strToU8('x') }, 'backslash'],
  ])('with a name that %s is refused', async (_, files, message) => {
    await expect(unzipped(zip(files as Zippable))).rejects.toThrow(message)
  })

  it('with an entry named as no program should have it is refused', async () => {
    const bytes = zip({ xxprotoxx: strToU8('x') })
    const renamed = Uint8Array.from(bytes)
    for (let at = 0; at < renamed.length - 9; at++) {
      if (new TextDecoder().decode(renamed.subarray(at, at + 9)) === 'xxprotoxx') renamed.set(strToU8('__proto__'), at)
    }
    await expect(unzipped(renamed)).rejects.toThrow('cannot be unpacked')
  })

  it('of a bomb is refused before anything is unpacked', async () => {
    const bomb = zip({ 'a.wav': new Uint8Array(50e6) })
    await expect(unzipped(bomb)).rejects.toThrow('unpacks to far more than any sound or sheet')
    await expect(unzipped(withField(bomb, PLAIN_SIZE, 1000))).rejects.toThrow('lies about its size')
    await expect(unzipped(withField(zip({ 'a.wav': strToU8('abc') }), PLAIN_SIZE, 4e9))).rejects.toThrow('MB')
  })

  it('of too many files is refused', async () => {
    const many = Object.fromEntries(Array.from({ length: 5001 }, (_, i) => [`${i}.wav`, new Uint8Array()]))
    await expect(unzipped(zipSync(many, { level: 0 }))).rejects.toThrow('holds more than 5000 files')
  })

  it('that is none, or breaks off, is refused in words', async () => {
    const good = zip({ 'a.wav': new TextEncoder().encode('abc'.repeat(1000)) })
    await expect(unzipped(strToU8('no zip at all'))).rejects.toThrow('walk.zip: is no zip, or a damaged one')
    await expect(unzipped(good.slice(0, good.length - 30))).rejects.toThrow('walk.zip')
    await expect(unzipped(withField(good, PACKED_SIZE, 5))).rejects.toThrow('walk.zip')
  })
})
