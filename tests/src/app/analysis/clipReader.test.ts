import { beforeEach, describe, expect, it } from 'vitest'
import { FormatError } from '../../../../shared/base/errors'
import type { Analyst } from '../../../../src/app/analysis/analyst'
import { ClipReader } from '../../../../src/app/analysis/clipReader'
import type { Database } from '../../../../src/app/storage/database'

const WAV = new TextEncoder().encode('RIFF....WAVEfmt ')

let calls: string[]
let answer: () => unknown
let reader: ClipReader

beforeEach(() => {
  calls = []
  answer = () => ({ density: new Float64Array(3) })
  const analyst = {
    call: async (name: string) => {
      calls.push(name)
      return answer()
    },
  } as unknown as Analyst
  const database = {
    get: async (_: string, sha256: string) => (sha256.startsWith('gone') ? undefined : { bytes: new Blob([WAV]) }),
  } as unknown as Database
  reader = new ClipReader(analyst, database)
})

const clip = (sha256: string | null) => ({ sha256, file: '1-on.wav' })

describe('reading clips', () => {
  it('works out each once, however often it is asked', async () => {
    const [a, b] = await Promise.all([reader.spectrum(clip('a')), reader.spectrum(clip('a'))])
    expect(a.ok && b.ok).toBe(true)
    await reader.samples(clip('a'))
    expect(calls).toEqual(['spectrum', 'samples'])
  })

  it('forgets the oldest when there are many', async () => {
    for (let i = 0; i < 9; i++) await reader.samples(clip(`s${i}`))
    calls.length = 0
    await reader.samples(clip('s8'))
    await reader.samples(clip('s0'))
    expect(calls).toEqual(['samples'])
  })

  it('says that a sound is lost, or was never there', async () => {
    expect(await reader.spectrum(clip('gone'))).toEqual({ ok: false, why: { key: 'sound_lost', values: {} } })
    expect(await reader.spectrum(clip(null))).toEqual({ ok: false, why: { key: 'sound_lost', values: {} } })
    expect(calls).toEqual([])
  })

  it('says that a clip is too short for a spectrum', async () => {
    answer = () => null
    expect(await reader.spectrum(clip('a'))).toEqual({ ok: false, why: { key: 'listen_too_short', values: {} } })
  })

  it('says why a file cannot be read', async () => {
    answer = () => {
      throw new FormatError('1-on.wav', '', 'it ends too early')
    }
    expect(await reader.samples(clip('a'))).toEqual({
      ok: false,
      why: { key: 'unreadable', values: { why: 'it ends too early' } },
    })
  })

  it('tries again after a fault of the program', async () => {
    answer = () => {
      throw new Error('the worker ended')
    }
    await expect(reader.spectrum(clip('a'))).rejects.toThrow('the worker ended')
    answer = () => ({ density: new Float64Array(3) })
    expect((await reader.spectrum(clip('a'))).ok).toBe(true)
  })
})
