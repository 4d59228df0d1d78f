import fc from 'fast-check'
import { expect, it } from 'vitest'
import { readWav } from '../../../shared/audio/readWav'
import { writeWav } from '../../../shared/audio/writeWav'
import { FormatError } from '../../../shared/base/errors'
import { chunk, format, int16, wav } from './wavBytes'

const tone = (frames: number) => Float32Array.from({ length: frames }, (_, i) => 0.5 * Math.sin(i))
const clip = {
  channels: [tone(40), tone(40)],
  sampleRateHz: 44_100,
  encoding: { kind: 'float', bits: 32 },
  problems: [],
} as const
const ds64 = Uint8Array.from({ length: 28 }, (_, i) => (i === 8 ? 80 : 0))

/** Valid files of every kind the reader knows. */
const VALID = [
  writeWav(clip),
  writeWav(clip, { encoding: 'float32' }),
  writeWav(clip, { encoding: 'pcm24', cues: [{ timeS: 0, label: 'ring' }] }),
  wav([format({ bits: 8 }), chunk('LIST', [1, 2, 3]), chunk('data', new Uint8Array(80))]),
  wav([format({ tag: 3, bits: 64 }), chunk('data', new Uint8Array(80))]),
  wav([format({ bits: 32, extensible: { validBits: 24, tag: 1 } }), chunk('data', new Uint8Array(80))]),
  wav([format({ big: true }), chunk('data', int16([1, 2, 3], true), { big: true })], { id: 'RIFX', big: true }),
  wav([chunk('ds64', ds64), format(), chunk('data', new Uint8Array(80), { size: 0xffffffff })], { id: 'RF64' }),
]

/** What a broken card, a bad cable or a bad person does to a file. */
const damage = fc.record({
  file: fc.nat(VALID.length - 1),
  set: fc.array(fc.tuple(fc.nat(120), fc.oneof(fc.nat(255), fc.constantFrom(0, 1, 0x7f, 0x80, 0xff))), {
    maxLength: 8,
  }),
  cut: fc.option(fc.nat(250)),
  insert: fc.option(fc.tuple(fc.nat(120), fc.uint8Array({ maxLength: 24 }))),
})

function damaged({ file, set, cut, insert }: typeof damage extends fc.Arbitrary<infer T> ? T : never): Uint8Array {
  let bytes = Array.from(VALID[file]!)
  for (const [at, value] of set) if (at < bytes.length) bytes[at] = value
  if (insert !== null) bytes.splice(insert[0], 0, ...insert[1])
  if (cut !== null) bytes = bytes.slice(0, cut)
  return Uint8Array.from(bytes)
}

it('a damaged file is read within its own size or refused in one line, and never worse (seed 11)', () => {
  const seen = { read: 0, refused: 0 }
  const check = (bytes: Uint8Array) => {
    try {
      const { channels, sampleRateHz, problems } = readWav(bytes, 'clip.wav')
      seen.read++
      const frames = channels[0]!.length
      expect(frames).toBeGreaterThan(0)
      expect(channels.every((channel) => channel.length === frames)).toBe(true)
      // A sample takes at least a byte in the file, so four in memory are at most four times the file.
      expect(frames * channels.length).toBeLessThanOrEqual(bytes.length)
      expect(channels.every((channel) => channel.every(Number.isFinite))).toBe(true)
      expect(sampleRateHz >= 8000 && sampleRateHz <= 192_000).toBe(true)
      expect(
        problems.every((problem) => Object.values(problem.values).every((value) => !Object.is(value, Number.NaN))),
      ).toBe(true)
    } catch (error) {
      expect(error).toBeInstanceOf(FormatError)
      expect((error as Error).message).toMatch(/^clip\.wav[^\n\r]*$/)
      seen.refused++
    }
  }
  fc.assert(
    fc.property(damage, (how) => check(damaged(how))),
    { seed: 11, numRuns: 8000 },
  )
  expect(seen.read).toBeGreaterThan(1000)
  expect(seen.refused).toBeGreaterThan(1000)
})

it('a megabyte of words that look like chunks is gone through once', () => {
  const words = Uint8Array.from('data'.repeat(250_000), (character) => character.charCodeAt(0))
  const file = wav([format(), chunk('LIST', words)])
  expect(() => readWav(file, 'x.wav')).toThrow('a WAV without a data chunk')
})

it('bytes that mean nothing are refused (seed 12)', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      expect(() => readWav(bytes, 'x.wav')).toThrow(FormatError)
    }),
    { seed: 12, numRuns: 500 },
  )
})
