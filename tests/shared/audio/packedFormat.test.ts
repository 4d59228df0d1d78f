import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { packedFormat } from '../../../shared/audio/packedFormat'

const bytes = (...parts: (string | number[])[]) =>
  Uint8Array.from(parts.flatMap((part) => (typeof part === 'string' ? [...part].map((c) => c.charCodeAt(0)) : part)))

/** 20 bits of rate at the place where RFC 9639, section 8.2 has them. */
const streamInfo = (rateHz: number) => [
  ...new Array(10).fill(0),
  rateHz >> 12,
  (rateHz >> 4) & 255,
  (rateHz & 15) << 4,
  0,
]
const flac = (rateHz: number) => bytes('fLaC', [0, 0, 0, 34], streamInfo(rateHz))
const oggPage = (packet: Uint8Array) => bytes('OggS', new Array(22).fill(0), [1, packet.length], [...packet])

describe('a packed sound file', () => {
  it('is no WAV file', () => {
    const wav = readFileSync(resolve(import.meta.dirname, '../../../demo-audio/01-on.wav'))
    expect(packedFormat(wav)).toBeNull()
  })

  it('that is FLAC loses nothing and tells its rate, behind a tag too', () => {
    for (const rateHz of [8000, 16_000, 44_100, 48_000, 96_000, 192_000]) {
      const told = { kind: 'flac', sampleRateHz: rateHz, lossless: true }
      expect(packedFormat(flac(rateHz))).toEqual(told)
      expect(packedFormat(bytes('ID3', [4, 0, 0, 0, 0, 1, 2], new Array(130).fill(7), [...flac(rateHz)]))).toEqual(told)
    }
  })

  it('in an Ogg file is told by its first packet', () => {
    const vorbis = bytes('\x01vorbis', [0, 0, 0, 0, 2, 0x44, 0xac, 0, 0])
    expect(packedFormat(oggPage(vorbis))).toEqual({ kind: 'ogg', sampleRateHz: 44_100, lossless: false })
    expect(packedFormat(oggPage(bytes('OpusHead', [1, 1])))).toEqual({
      kind: 'ogg',
      sampleRateHz: 48_000,
      lossless: false,
    })
    const native = bytes('\x7fFLAC', [1, 0, 0, 1], [...flac(22_050)])
    expect(packedFormat(oggPage(native))).toEqual({ kind: 'ogg', sampleRateHz: 22_050, lossless: true })
  })

  it('that is MP3 tells its rate by version and index', () => {
    // ISO/IEC 11172-3, 2.4.2.3: sync 11 bits, version, layer III, no CRC; bit rate index 9; rate index 0, 1, 2.
    expect(packedFormat(bytes([0xff, 0xfb, 0x90, 0]))?.sampleRateHz).toBe(44_100)
    expect(packedFormat(bytes([0xff, 0xfb, 0x94, 0]))?.sampleRateHz).toBe(48_000)
    expect(packedFormat(bytes([0xff, 0xf3, 0x90, 0]))?.sampleRateHz).toBe(22_050)
    expect(packedFormat(bytes([0xff, 0xe3, 0x98, 0]))?.sampleRateHz).toBe(8000)
    expect(packedFormat(bytes([0xff, 0xf1, 0x50, 0x80]))?.kind).toBe('aac')
  })

  it('in the containers of phones is told without a rate', () => {
    expect(packedFormat(bytes([0, 0, 0, 24], 'ftypM4A '))).toEqual({ kind: 'mp4', sampleRateHz: null, lossless: false })
    expect(packedFormat(bytes([0x1a, 0x45, 0xdf, 0xa3, 0]))).toEqual({
      kind: 'webm',
      sampleRateHz: null,
      lossless: false,
    })
  })

  it('never tells a rate that no clip has, whatever the bytes are (seed 30)', () => {
    const starts = ['', 'fLaC', 'OggS', 'ID3\x04\x00\x00\x00\x00\x00\x08', '\xff\xfb']
    fc.assert(
      fc.property(fc.constantFrom(...starts), fc.uint8Array({ maxLength: 80 }), (start, rest) => {
        const rate = packedFormat(bytes(start, [...rest]))?.sampleRateHz ?? null
        expect(rate === null || (rate >= 8000 && rate <= 192_000)).toBe(true)
      }),
      { seed: 30, numRuns: 1000 },
    )
  })
})
