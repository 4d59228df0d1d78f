/// <reference path="../../../shared/audio/wavefile.d.ts" />

import { describe, expect, it } from 'vitest'
import wavefile from 'wavefile/dist/wavefile.js'
import type { Clip } from '../../../shared/audio/clip'
import { readWav } from '../../../shared/audio/readWav'
import { type WriteWavOptions, writeWav } from '../../../shared/audio/writeWav'
import { InputError } from '../../../shared/base/errors'
import { Random } from '../../../shared/base/random'
import { powerToDb } from '../../../shared/base/units'
import { close } from '../../support/close'

const clipOf = (...channels: readonly (readonly number[] | Float32Array)[]): Clip => ({
  channels: channels.map((samples) => Float32Array.from(samples)),
  sampleRateHz: 48_000,
  encoding: { kind: 'float', bits: 32 },
  problems: [],
})
const noise = (name: string, length = 1000) => {
  const random = new Random(name)
  return Float32Array.from({ length }, () => random.uniform(-1, 1))
}
const words = (bytes: Uint8Array, at: number) => new DataView(bytes.buffer, bytes.byteOffset).getUint32(at, true)
/** What wavefile read of a `bext` chunk, without the NULs that fill its fields. */
const broadcastOf = (file: Uint8Array) =>
  Object.fromEntries(
    Object.entries(new wavefile.WaveFile(file).bext).map(([name, value]) => [
      name,
      typeof value === 'string' ? value.replaceAll('\0', '') : value,
    ]),
  )
const NOTES = {
  description: 'Alder Square, point 6, air on',
  originator: 'Yardhark',
  originatorReference: '06-on',
  date: '2031-05-04',
  time: '09:30:15',
}

describe('sizes', () => {
  it('one second of mono 16-bit at 48 kHz: 96 000 bytes of sound, RIFF size 96 036, file 96 044', () => {
    // A header of 44 bytes, of which RIFF does not count the first 8. [RIFF1991]
    const file = writeWav(clipOf(new Float32Array(48_000)))
    expect([words(file, 40), words(file, 4), file.length]).toEqual([96_000, 96_036, 96_044])
    expect([words(file, 28), file[32]]).toEqual([96_000, 2]) // byte rate, block
  })
  it('sound of odd length is padded, and what follows it is found', () => {
    const file = writeWav(clipOf([0.1, 0.2, 0.3]), { encoding: 'pcm24', cues: [{ timeS: 0, label: 'a' }] })
    expect(words(file, 40)).toBe(9)
    expect(file.length % 2).toBe(0)
    expect(words(file, 4)).toBe(file.length - 8)
    expect(String.fromCharCode(...file.subarray(44 + 10, 44 + 14))).toBe('cue ')
  })
})

describe('rounding', () => {
  const written = (values: number[], options?: WriteWavOptions) =>
    Array.from(readWav(writeWav(clipOf(values), options), 'x.wav').channels[0]!, (x) => x * 32768)

  it('goes to the nearest step, halves away from zero, so that a mirror image stays one', () => {
    const steps = [0.4, 0.5, 1.49, 1.5, 2.5, -0.4, -0.5, -1.49, -1.5, -2.5]
    expect(written(steps.map((step) => step / 32768))).toEqual([0, 1, 1, 2, 3, 0, -1, -1, -2, -3])
  })
  it('clamps what the depth does not hold', () => {
    expect(written([1, 1.5, -1, -1.5, 32767.4 / 32768])).toEqual([32767, 32767, -32768, -32768, 32767])
  })
  it('writes what is no number as 0', () => {
    const strange = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0.5]
    expect(written(strange)).toEqual([0, 32767, -32768, 16384])
    expect(written(strange, { encoding: 'float32' })).toEqual([0, 0, 0, 16384])
  })
  it('leaves 98.09 dB between a full-scale sine and its error, as 16 bits should', () => {
    // 6.0206·16 + 1.7609 dB, the ideal quantiser.
    const sine = Float32Array.from(
      { length: 48_000 },
      (_, i) => (32767 / 32768) * Math.sin((2 * Math.PI * 997 * i) / 48_000),
    )
    const back = readWav(writeWav(clipOf(sine)), 'x.wav').channels[0]!
    const error = sine.reduce((sum, x, i) => sum + (x - back[i]!) ** 2, 0) / sine.length
    close(powerToDb(0.5 / error), 98.09, { abs: 0.3, because: 'the error of a sine is nearly but not quite uniform' })
  })
  it('with dither makes the error independent of the sound: its mean square is a quarter of a step squared', () => {
    // Triangular dither of two steps: 1/12 + 1/6 = 1/4, whatever is written, here a constant between two steps.
    const level = 0.3 / 32768
    const back = written(Array(20_000).fill(level), { dither: new Random('dither') })
    const mean = back.reduce((sum, x) => sum + x, 0) / back.length
    const square = back.reduce((sum, x) => sum + (x - 0.3) ** 2, 0) / back.length
    close(mean, 0.3, { abs: 0.015, because: 'four standard errors of 20 000 samples' })
    close(square, 0.25, { abs: 0.015, because: 'four standard errors of 20 000 samples' })
  })
})

describe('a round trip', () => {
  it('gives back every sample of each depth', () => {
    const source = clipOf(noise('left'), noise('right'))
    for (const encoding of ['pcm16', 'pcm24', 'float32'] as const) {
      const once = readWav(writeWav(source, { encoding }), 'x.wav')
      const twice = readWav(writeWav(once, { encoding }), 'x.wav')
      expect(twice).toEqual(once)
      expect(once.problems).toEqual([])
      const step = encoding === 'pcm16' ? 2 ** -16 : encoding === 'pcm24' ? 2 ** -24 : 0
      for (const [c, samples] of once.channels.entries()) {
        for (const [i, x] of samples.entries()) expect(Math.abs(x - source.channels[c]![i]!)).toBeLessThanOrEqual(step)
      }
    }
  })
  it('gives the same bytes for the same clip and options', () => {
    const options = { broadcast: NOTES, cues: [{ timeS: 0.01, label: 'ring' }] }
    expect(writeWav(clipOf(noise('same')), options)).toEqual(writeWav(clipOf(noise('same')), options))
  })
})

describe('wavefile reads', () => {
  it('the samples of every depth', () => {
    const left = noise('peer')
    for (const [encoding, scale] of [
      ['pcm16', 2 ** 15],
      ['pcm24', 2 ** 23],
      ['float32', 1],
    ] as const) {
      const file = writeWav(clipOf(left, noise('other')), { encoding })
      const peer = new wavefile.WaveFile(file).getSamples(false)[0] as Float64Array
      expect(Float32Array.from(peer, (x) => x / scale)).toEqual(readWav(file, 'x.wav').channels[0])
    }
  })
  it('the broadcast notes, with the start counted in samples since midnight', () => {
    const bext = broadcastOf(writeWav(clipOf(noise('b')), { broadcast: NOTES }))
    expect(bext).toMatchObject({
      description: NOTES.description,
      originator: 'Yardhark',
      originatorReference: '06-on',
      originationDate: '2031-05-04',
      originationTime: '09:30:15',
      timeReference: [(9 * 3600 + 30 * 60 + 15) * 48_000, 0],
      version: 1,
      codingHistory: 'A=PCM,F=48000,W=16,M=mono\r\n',
    })
  })
  it('a start beyond 32 bits of samples', () => {
    const late = { ...clipOf(noise('b')), sampleRateHz: 192_000 }
    const bext = broadcastOf(writeWav(late, { broadcast: { ...NOTES, time: '23:00:00' } }))
    const [low, high] = bext.timeReference as number[]
    expect(low! + high! * 2 ** 32).toBe(23 * 3600 * 192_000)
  })
  it('cue points in order of time with their labels, however many', () => {
    const count = 130
    const cues = Array.from({ length: count }, (_, i) => ({
      timeS: ((i * 37) % count) / 1000,
      label: `ring ${(i * 37) % count}`,
    }))
    const points = new wavefile.WaveFile(writeWav(clipOf(noise('c', 48_000)), { cues })).listCuePoints()
    expect(points.map((point) => point.label)).toEqual(Array.from({ length: count }, (_, i) => `ring ${i}`))
    expect(points.map((point) => point.dwSampleOffset)).toEqual(Array.from({ length: count }, (_, i) => i * 48))
    expect(points.map((point) => point.dwName)).toEqual(Array.from({ length: count }, (_, i) => i + 1))
  })
})

describe('the bext chunk', () => {
  it('stands before the sound and has 602 bytes before its coding history', () => {
    // EBU Tech 3285: 256 + 32 + 32 + 10 + 8 + 8 + 2 + 64 + 10 + 180. [EBU3285]
    const file = writeWav(clipOf([0.5]), { broadcast: NOTES })
    expect(String.fromCharCode(...file.subarray(12, 16))).toBe('bext')
    expect(words(file, 16)).toBe(602 + 'A=PCM,F=48000,W=16,M=mono\r\n'.length)
    expect(readWav(file, 'x.wav').channels[0]).toEqual(Float32Array.of(0.5))
  })
  it('takes texts that are too long or not ASCII without breaking', () => {
    const long = {
      ...NOTES,
      description: 'ö'.repeat(300),
      originator: 'x'.repeat(40),
      originatorReference: 'a\u0000b😀',
    }
    const file = writeWav(clipOf([0.5]), { broadcast: long })
    const bext = broadcastOf(file)
    expect([bext.description, bext.originator, bext.originatorReference]).toEqual([
      '?'.repeat(256),
      'x'.repeat(32),
      'a?b?',
    ])
    expect(readWav(file, 'x.wav').problems).toEqual([])
  })
})

describe('refuses', () => {
  const one = clipOf([0, 0, 0])
  const cases: [string, () => unknown, string][] = [
    ['no channel', () => writeWav(clipOf()), 'without a channel'],
    ['channels of different lengths', () => writeWav(clipOf([0], [0, 0])), 'differ in length'],
    ['a rate that is no whole number', () => writeWav({ ...one, sampleRateHz: 44_100.5 }), '44100.5'],
    ['a date out of form', () => writeWav(one, { broadcast: { ...NOTES, date: '4.5.2031' } }), '"4.5.2031"'],
    ['a time out of form', () => writeWav(one, { broadcast: { ...NOTES, time: '24:00:00' } }), '"24:00:00"'],
    ['a cue past the end', () => writeWav(one, { cues: [{ timeS: 1, label: '' }] }), 'at 1 s lies outside'],
    ['a cue before the start', () => writeWav(one, { cues: [{ timeS: -1, label: '' }] }), 'at -1 s lies outside'],
    [
      'a cue that is no time',
      () => writeWav(one, { cues: [{ timeS: Number.NaN, label: '' }] }),
      'at NaN s lies outside',
    ],
  ]
  it.each(cases)('%s', (_, attempt, part) => {
    expect(attempt).toThrow(InputError)
    expect(attempt).toThrow(part)
  })
  it('a file over 4 GiB, before it takes the memory', () => {
    const samples = new Float32Array(1)
    Object.defineProperty(samples, 'length', { value: 2 ** 31 })
    expect(() => writeWav({ ...one, channels: [samples] })).toThrow('less than 4 GiB')
  })
})
