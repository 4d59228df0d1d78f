import { unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { unzip } from '../../../src/worker/unzip'
import { zip } from '../../../src/worker/zip'

const text = (content: string) => new Blob([content])
const sound = Uint8Array.from({ length: 300_000 }, (_, i) => (i * i * 7 + (i >> 3)) & 255)
const FILES = [
  { path: 'yard/sweep.csv', bytes: text('point,along_m,file\r\n'.repeat(100)) },
  { path: 'yard/06-on.wav', bytes: new Blob([sound]) },
  { path: 'yard/Łódź 北京.wav', bytes: new Blob([]) },
]
const bytesOf = async (blob: Blob) => new Uint8Array(await blob.arrayBuffer())

describe('a zip', () => {
  it('gives back the very bytes, sound stored as it is and text deflated', async () => {
    const done: number[] = []
    const packed = await bytesOf(await zip(FILES, (count) => done.push(count)))
    const sizes: Record<string, number> = {}
    const files = unzipSync(packed, {
      filter: ({ name, size }) => {
        sizes[name] = size
        return true
      },
    })
    expect(Object.keys(files)).toEqual(FILES.map(({ path }) => path))
    expect(Buffer.compare(files['yard/06-on.wav']!, sound)).toBe(0)
    expect(sizes['yard/06-on.wav']).toBe(sound.length)
    expect(sizes['yard/sweep.csv']).toBeLessThan(200)
    expect(done).toEqual([0, 1, 2])
  })

  it('of the same files is the same, whenever and in whatever zone it is made', async () => {
    const zone = process.env.TZ
    const first = await bytesOf(await zip(FILES, () => undefined))
    process.env.TZ = 'Pacific/Auckland'
    const second = await bytesOf(await zip(FILES, () => undefined))
    process.env.TZ = zone
    expect(Buffer.compare(first, second)).toBe(0)
  })

  it('passes the look that a zip of a stranger gets', async () => {
    const seen: string[] = []
    await unzip(await zip(FILES, () => undefined), 'yard.zip', ({ path }) => seen.push(path))
    expect(seen).toEqual(FILES.map(({ path }) => path))
  })

  it('fails with what could not be read', async () => {
    const broken = { arrayBuffer: () => Promise.reject(new Error('gone')) } as unknown as Blob
    await expect(zip([{ path: 'a.wav', bytes: broken }], () => undefined)).rejects.toThrow('gone')
  })
})
