/// <reference path="../../../shared/audio/wavefile.d.ts" />
import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import wavefile from 'wavefile/dist/wavefile.js'
import { readWav } from '../../../shared/audio/readWav'
import { readWavHeader } from '../../../shared/audio/readWavHeader'
import { MOST_FRAMES, MOST_SAMPLES } from '../../../shared/audio/wavLayout'
import { Random } from '../../../shared/base/random'
import { powerToDb } from '../../../shared/base/units'
import { close } from '../../support/close'
import { chunk, format, int16, joined, wav } from './wavBytes'

const FIXTURES = resolve(import.meta.dirname, '../../../node_modules/wav/test/fixtures')
const fixture = (name: string) => readWav(readFileSync(join(FIXTURES, name)), name)

/** Little-endian bytes of one number. */
function bytesOf(kind: 'Int32' | 'Float32' | 'Float64', value: number, big = false): Uint8Array {
  const view = new DataView(new ArrayBuffer(kind === 'Float64' ? 8 : 4))
  view[`set${kind}`](0, value, !big)
  return new Uint8Array(view.buffer)
}

describe('a sample is its integer over 2^(bits − 1)', () => {
  const only = (fields: Parameters<typeof format>[0], sound: Uint8Array) =>
    Array.from(readWav(wav([format(fields), chunk('data', sound)]), 'clip.wav').channels[0]!)

  it('with 8 bits, which are unsigned', () => {
    expect(only({ bits: 8 }, Uint8Array.of(0, 127, 128, 255))).toEqual([-1, -1 / 128, 0, 127 / 128])
  })
  it('with 16 bits', () => {
    expect(only({ bits: 16 }, int16([-32768, -1, 0, 1, 32767]))).toEqual([-1, -1 / 32768, 0, 1 / 32768, 32767 / 32768])
  })
  it('with 24 bits, each of them exactly', () => {
    const sound = Uint8Array.of(0, 0, 0x80, 0xff, 0xff, 0xff, 1, 0, 0, 0xff, 0xff, 0x7f)
    expect(only({ bits: 24 }, sound)).toEqual([-1, -(2 ** -23), 2 ** -23, 1 - 2 ** -23])
  })
  it('with 32 bits, to the precision of a Float32', () => {
    const sound = joined([-(2 ** 31), -(2 ** 30), 128].map((value) => bytesOf('Int32', value)))
    expect(only({ bits: 32 }, sound)).toEqual([-1, -0.5, 128 / 2 ** 31])
  })
  it('with 32-bit floats, beyond full scale too', () => {
    const sound = joined([0.25, -1.5, 1e-20].map((value) => bytesOf('Float32', value)))
    expect(only({ tag: 3, bits: 32 }, sound)).toEqual([0.25, -1.5, Math.fround(1e-20)])
  })
  it('with 64-bit floats', () => {
    const sound = joined([0.1, -3].map((value) => bytesOf('Float64', value)))
    expect(only({ tag: 3, bits: 64 }, sound)).toEqual([Math.fround(0.1), -3])
  })
  it('with 20 bits at the upper end of three bytes, and 24 at the upper end of four', () => {
    expect(only({ bits: 20 }, Uint8Array.of(0, 0, 0x40))).toEqual([0.5])
    expect(only({ bits: 24, blockBytes: 4 }, Uint8Array.of(0, 0, 0, 0x40))).toEqual([0.5])
  })
})

describe('the extensible format', () => {
  it('wraps integers; valid bits are told, and stand at the upper end of the container', () => {
    const sound = joined([2 ** 30, -(2 ** 29)].map((value) => bytesOf('Int32', value)))
    const clip = readWav(
      wav([format({ bits: 32, extensible: { validBits: 24, tag: 1 } }), chunk('data', sound)]),
      'x.wav',
    )
    expect(clip.encoding).toEqual({ kind: 'pcm', bits: 24 })
    expect(Array.from(clip.channels[0]!)).toEqual([0.5, -0.25])
  })
  it('wraps floats', () => {
    const sound = joined([0.058, -0.5].map((value) => bytesOf('Float32', value)))
    const clip = readWav(
      wav([format({ bits: 32, extensible: { validBits: 32, tag: 3 } }), chunk('data', sound)]),
      'x.wav',
    )
    expect(clip.encoding).toEqual({ kind: 'float', bits: 32 })
    expect(Array.from(clip.channels[0]!)).toEqual([Math.fround(0.058), -0.5])
  })
  it('is read like the plain one by wavefile too, for integers', () => {
    const file = wav([format({ bits: 16, extensible: { validBits: 16, tag: 1 } }), chunk('data', int16([5, -6, 7]))])
    const peer = new wavefile.WaveFile(file).getSamples(false)
    expect(Array.from(readWav(file, 'x.wav').channels[0]!, (x) => x * 32768)).toEqual(Array.from(peer as Float64Array))
  })
})

describe('channels', () => {
  it('are dealt out of the frames', () => {
    const clip = readWav(wav([format({ channels: 3 }), chunk('data', int16([1, 2, 3, 4, 5, 6]))]), 'x.wav')
    expect(clip.channels.map((channel) => Array.from(channel, (x) => x * 32768))).toEqual([
      [1, 4],
      [2, 5],
      [3, 6],
    ])
  })
  it('may be 65 535 when one frame of them is there', () => {
    const sound = Uint8Array.from({ length: 65_535 }, (_, i) => i % 256)
    const { channels } = readWav(wav([format({ channels: 65_535, bits: 8 }), chunk('data', sound)]), 'x.wav')
    expect(channels.length).toBe(65_535)
    expect(channels[300]![0]).toBe((44 - 128) / 128)
  })
})

describe('containers', () => {
  it('RIFX has everything the other way round', () => {
    const body = [format({ big: true }), chunk('data', int16([258, -2], true), { big: true })]
    const clip = readWav(wav(body, { id: 'RIFX', big: true }), 'x.wav')
    expect(Array.from(clip.channels[0]!, (x) => x * 32768)).toEqual([258, -2])
  })
  it('RIFX of every depth equals RIFF, as another program turned it round', () => {
    const random = new Random('rifx')
    for (const depth of ['16', '24', '32', '32f', '64']) {
      const scale = depth.includes('f') || depth === '64' ? 1 : 2 ** (Number(depth) - 1)
      const samples = Float64Array.from({ length: 50 }, () => Math.round(random.uniform(-1, 1) * scale * 1000) / 1000)
      const peer = new wavefile.WaveFile()
      peer.fromScratch(1, 44_100, depth, scale === 1 ? samples : samples.map(Math.round))
      const little = readWav(peer.toBuffer(), 'little.wav')
      peer.toRIFX()
      expect(readWav(peer.toBuffer(), 'big.wav')).toEqual(little)
    }
  })
  it('RF64 and BW64 have their sizes in ds64, and 0xFFFFFFFF where RIFF has them', () => {
    // EBU Tech 3306 [EBU3306]: both 32-bit fields hold 0xFFFFFFFF and ds64 is the first chunk.
    const ds64 = new Uint8Array(28)
    new DataView(ds64.buffer).setUint32(8, 6, true)
    for (const id of ['RF64', 'BW64']) {
      const body = [
        chunk('ds64', ds64),
        format(),
        chunk('data', int16([1, 2, 3]), { size: 0xffffffff }),
        chunk('LIST', [1]),
      ]
      const clip = readWav(wav(body, { id, size: 0xffffffff }), 'x.wav')
      expect(Array.from(clip.channels[0]!, (x) => x * 32768)).toEqual([1, 2, 3])
      expect(clip.problems).toEqual([])
    }
  })
})

describe('beside other programs', () => {
  it('every sample equals what wavefile wrote, in each encoding it has right', () => {
    const random = new Random('peer')
    for (const depth of ['8', '16', '24', '32', '32f', '64']) {
      const float = depth === '32f' || depth === '64'
      const scale = 2 ** (Number.parseInt(depth, 10) - 1)
      const value = () => {
        const x = random.uniform(-1, 1)
        if (float) return x
        return Math.floor(x * scale) + (depth === '8' ? 128 : 0)
      }
      const channels = Array.from({ length: 2 }, () => Float64Array.from({ length: 300 }, value))
      const peer = new wavefile.WaveFile()
      peer.fromScratch(2, 96_000, depth, channels)
      const clip = readWav(peer.toBuffer(), 'peer.wav')
      expect(clip.sampleRateHz).toBe(96_000)
      expect(clip.encoding).toEqual({ kind: float ? 'float' : 'pcm', bits: Number.parseInt(depth, 10) })
      const expected = channels.map((samples) =>
        Float32Array.from(samples, (x) => (float ? x : depth === '8' ? (x - 128) / 128 : x / scale)),
      )
      expect(clip.channels).toEqual(expected)
    }
  })
  it('fixtures of the wav package: RIFX equals RIFF, 64-bit float equals 32-bit, 8 bits are unsigned', () => {
    const bytes = (name: string) => fixture(name).channels.map((samples) => Buffer.from(samples.buffer).toString('hex'))
    expect(bytes('gameover-rifx.wav')).toEqual(bytes('gameover.wav'))
    expect(bytes('M1F1-float64-AFsp.wav')).toEqual(bytes('M1F1-float32-AFsp.wav'))
    expect(fixture('1up.wav').encoding).toEqual({ kind: 'pcm', bits: 8 })
  })
})

describe('levels, by closed form and published figures', () => {
  const meanSquareDb = (values: readonly number[]) => {
    const samples = readWav(wav([format(), chunk('data', int16(values))]), 'x.wav').channels[0]!
    return powerToDb(samples.reduce((sum, x) => sum + x * x, 0) / samples.length)
  }
  it('the RMS of 520 and 2500 that Android asks of a phone read −35.99 and −22.35 dBFS', () => {
    // Android Compatibility Definition 5.11 (94 dB SPL, unprocessed) and 5.4.7 (90 dB SPL, voice recognition). [AndroidCDD]
    close(meanSquareDb([520, -520]), -35.99, { abs: 0.005, because: 'two decimals are published' })
    close(meanSquareDb([2500, -2500]), -22.35, { abs: 0.005, because: 'two decimals are published' })
  })
  it('a sine and a triangle at full scale have crests of 3.0103 and 4.7712 dB', () => {
    const length = 48_000
    const crest = (wave: (phase: number) => number) => {
      const values = Array.from({ length }, (_, i) => Math.round(32767 * wave((i % 480) / 480)))
      return powerToDb((32767 / 32768) ** 2)! - meanSquareDb(values)!
    }
    const because = '16-bit rounding moves the mean square by 1e-5 at most'
    close(
      crest((phase) => Math.sin(2 * Math.PI * phase)),
      10 * Math.log10(2),
      { abs: 1e-4, because },
    )
    close(
      crest((phase) => 1 - 4 * Math.abs(phase - 0.5)),
      10 * Math.log10(3),
      { abs: 3e-4, because },
    )
  })
})

describe('the header alone', () => {
  it('tells what readWav tells, without the samples', () => {
    const file = wav([format({ channels: 2, rateHz: 44_100, bits: 24 }), chunk('data', new Uint8Array(6 * 441))])
    expect(readWavHeader(file, 'x.wav')).toEqual({
      durationS: 0.01,
      frames: 441,
      channels: 2,
      sampleRateHz: 44_100,
      encoding: { kind: 'pcm', bits: 24 },
      problems: [],
    })
  })
})

describe('a recorder left running', () => {
  it('is refused past 30 million frames, with the time that is read at its rate', () => {
    const file = (frames: number) => wav([format({ rateHz: 8000, bits: 8 }), chunk('data', new Uint8Array(frames))])
    expect(readWavHeader(file(MOST_FRAMES), 'x.wav').frames).toBe(30_000_000)
    expect(() => readWav(file(MOST_FRAMES + 1), 'x.wav')).toThrow(
      'x.wav: holds 62.5 min of sound, and at most 62.5 min are read at 8000 Hz; cut it down to the seconds you listened',
    )
  })
  it('is refused sooner with many channels, which are all held in memory', () => {
    const sound = new Uint8Array(MOST_SAMPLES + 64)
    const file = wav([format({ rateHz: 8000, bits: 8, channels: 64 }), chunk('data', sound)])
    expect(() => readWav(file, 'x.wav')).toThrow(
      'x.wav: holds 3.9 min of sound, and at most 3.9 min are read at 8000 Hz and 64 channels; cut it down to the seconds',
    )
  })
})

describe('the bytes given', () => {
  it('may lie anywhere in a larger buffer, and are not changed', () => {
    const file = wav([format(), chunk('data', int16([1, -2, 3]))])
    const larger = joined([Uint8Array.of(9, 9, 9), file, Uint8Array.of(9)])
    const before = larger.slice()
    expect(readWav(larger.subarray(3, 3 + file.length), 'x.wav')).toEqual(readWav(file, 'x.wav'))
    expect(larger).toEqual(before)
  })
})
