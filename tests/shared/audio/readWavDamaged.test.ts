import { describe, expect, it } from 'vitest'
import { readWav } from '../../../shared/audio/readWav'
import { readWavHeader } from '../../../shared/audio/readWavHeader'
import { FormatError } from '../../../shared/base/errors'
import { chunk, type FormatFields, format, int16, joined, wav } from './wavBytes'

const SOUND = int16([100, -200, 300, -400])
const read = (bytes: Uint8Array) => {
  const { channels, problems } = readWav(bytes, 'clip.wav')
  return { samples: Array.from(channels[0]!, (x) => x * 32768), problems }
}
const WHOLE = [100, -200, 300, -400]

describe('chunks', () => {
  it('may come in any order, the format last', () => {
    expect(read(wav([chunk('data', SOUND), format()]))).toEqual({ samples: WHOLE, problems: [] })
  })
  it('of odd size are followed by a pad byte', () => {
    expect(read(wav([chunk('bext', [1, 2, 3]), format(), chunk('data', SOUND)]))).toEqual({
      samples: WHOLE,
      problems: [],
    })
  })
  it('of odd size are found without one too', () => {
    for (const id of ['LIST', 'abcd']) {
      const file = wav([format(), chunk(id, [1, 2, 3], { pad: false }), chunk('data', SOUND)])
      expect(read(file)).toEqual({ samples: WHOLE, problems: [] })
    }
  })
  it('of odd size without a pad byte before a chunk that nobody knows', () => {
    const file = wav([format(), chunk('LIST', [1, 2, 3], { pad: false }), chunk('xyzw', [0, 0]), chunk('data', SOUND)])
    expect(read(file)).toEqual({ samples: WHOLE, problems: [] })
  })
  it('after the sound may be anything', () => {
    expect(read(wav([format(), chunk('data', SOUND), Uint8Array.of(1, 2, 3)]))).toEqual({
      samples: WHOLE,
      problems: [],
    })
  })
})

describe('a size that lies', () => {
  const lies = (part: string) => [{ key: 'header_lies', severity: 'note', values: { chunk: part } }]

  it('beyond the file, before the sound: the sound is found all the same', () => {
    const file = wav([format(), chunk('LIST', [1, 2, 3, 4], { size: 0x7fffffff }), chunk('data', SOUND)])
    expect(read(file)).toEqual({ samples: WHOLE, problems: lies('LIST') })
  })
  it('beyond the file, before the format: both are found', () => {
    const file = wav([chunk('LIST', [1, 2], { size: 4_000_000 }), format(), chunk('data', SOUND)])
    expect(read(file)).toEqual({ samples: WHOLE, problems: lies('LIST') })
  })
  it('short, so that a chunk seems to begin in the middle of another', () => {
    const file = wav([format(), chunk('LIST', [1, 2, 3, 4, 5, 6, 7, 200, 0, 0], { size: 2 }), chunk('data', SOUND)])
    expect(read(file)).toEqual({ samples: WHOLE, problems: lies('LIST') })
  })
  it('just over the sound, so that the sound is swallowed', () => {
    const file = wav([format(), chunk('LIST', [1, 2], { size: 2 + 8 + SOUND.length }), chunk('data', SOUND)])
    expect(read(file)).toEqual({ samples: WHOLE, problems: lies('LIST') })
  })
  it('over the format, so that the format is swallowed', () => {
    const file = wav([chunk('JUNK', [1, 2], { size: 2 + 24 }), format(), chunk('data', SOUND)])
    expect(read(file)).toEqual({ samples: WHOLE, problems: lies('JUNK') })
  })
  it('and a word in a comment that looks like a chunk is not taken for one', () => {
    const comment = Uint8Array.from('field data from the yard, fmt unknown, data below', (c) => c.charCodeAt(0))
    const file = wav([
      format(),
      chunk('LIST', comment, { size: comment.length + 9 + SOUND.length }),
      chunk('data', SOUND),
    ])
    expect(read(file)).toEqual({ samples: WHOLE, problems: lies('LIST') })
  })
  it('of the data chunk, when the file as a whole does not claim to be so long', () => {
    expect(read(wav([format(), chunk('data', SOUND, { size: 5000 })]))).toEqual({
      samples: WHOLE,
      problems: lies('data'),
    })
  })
  it('of the file as a whole costs nothing', () => {
    expect(read(wav([format(), chunk('data', SOUND)], { size: 0xfffffff0 }))).toEqual({ samples: WHOLE, problems: [] })
    expect(read(wav([format(), chunk('data', SOUND)], { size: 0 }))).toEqual({ samples: WHOLE, problems: [] })
  })
  it('of a cue chunk that claims 2^31 entries is never looked into', () => {
    const cue = chunk('cue ', [0, 0, 0, 0x80])
    expect(read(wav([format(), cue, chunk('data', SOUND)]))).toEqual({ samples: WHOLE, problems: [] })
  })
  it('of 200 000 empty chunks is walked over', () => {
    const many = joined(Array.from({ length: 200_000 }, () => chunk('JUNK', [])))
    expect(read(wav([many, format(), chunk('data', SOUND)]))).toEqual({ samples: WHOLE, problems: [] })
  })
})

describe('a header that was never filled in', () => {
  const notPatched = [{ key: 'header_not_patched', severity: 'note', values: {} }]

  it('has 0, 0xFFFFFFFF or nearly 2^31 for the size of the sound: the rest of the file is sound', () => {
    for (const size of [0, 0xffffffff, 0x7ffff000, 0x80000000]) {
      expect(read(wav([format(), chunk('data', SOUND, { size })]))).toEqual({ samples: WHOLE, problems: notPatched })
    }
  })
  it('in RF64 has 0 in its ds64 chunk, or no such chunk', () => {
    const data = chunk('data', SOUND, { size: 0xffffffff })
    for (const body of [
      [chunk('ds64', new Uint8Array(28)), format(), data],
      [format(), data],
    ]) {
      expect(read(wav(body, { id: 'RF64' }))).toEqual({ samples: WHOLE, problems: notPatched })
    }
  })
  it('is not what a recording of nothing has: there another chunk follows', () => {
    expect(() => read(wav([format(), chunk('data', []), chunk('LIST', SOUND)]))).toThrow(
      'clip.wav, byte 44: holds no sound, not one whole sample; record it again',
    )
  })
})

describe('a file that breaks off', () => {
  const whole = wav([format({ rateHz: 8000 }), chunk('data', new Uint8Array(16_000))])

  it('is read as far as whole samples go, and says how much is there', () => {
    const { channels, problems } = readWav(whole.subarray(0, 44 + 4001), 'clip.wav')
    expect(channels[0]!.length).toBe(2000)
    expect(problems).toEqual([
      { key: 'truncated', severity: 'weak', values: { found_s: 4001 / 16_000, expected_s: 1 } },
    ])
  })
  it('near its end is hardly worth a word', () => {
    expect(readWav(whole.subarray(0, whole.length - 1), 'clip.wav').problems[0]).toMatchObject({ severity: 'note' })
  })
  it('is read frame by frame when it has several channels', () => {
    const file = wav([format({ channels: 3 }), chunk('data', int16([1, 2, 3, 4, 5, 6, 7, 8]))])
    expect(readWav(file, 'x.wav').channels.map((channel) => channel.length)).toEqual([2, 2, 2])
  })
  it('in RF64 says so too, since ds64 has the length of the whole', () => {
    const ds64 = new Uint8Array(28)
    new DataView(ds64.buffer).setUint32(0, 1000, true)
    new DataView(ds64.buffer).setUint32(8, 16, true)
    const file = wav([chunk('ds64', ds64), format({ rateHz: 8000 }), chunk('data', SOUND, { size: 0xffffffff })], {
      id: 'RF64',
    })
    expect(read(file).problems).toEqual([
      { key: 'truncated', severity: 'weak', values: { found_s: 0.0005, expected_s: 0.001 } },
    ])
  })
  it('has the same length, problems and errors by its header alone, wherever it breaks off', () => {
    for (let length = 0; length < 80; length++) {
      const cut = whole.subarray(0, length)
      const outcome = (of: () => { frames: number; problems: readonly unknown[] }) => {
        try {
          return of()
        } catch (error) {
          expect(error).toBeInstanceOf(FormatError)
          return (error as Error).message
        }
      }
      const byReading = outcome(() => {
        const { channels, problems } = readWav(cut, 'x.wav')
        return { frames: channels[0]!.length, problems }
      })
      const byHeader = outcome(() => {
        const { frames, problems } = readWavHeader(cut, 'x.wav')
        return { frames, problems }
      })
      expect(byHeader).toEqual(byReading)
    }
  })
})

describe('floats that are no numbers', () => {
  it('become 0 and are counted', () => {
    const sound = new Uint8Array(new Float32Array([0.5, Number.NaN, Number.NEGATIVE_INFINITY, -0.5]).buffer)
    const { samples, problems } = read(wav([format({ tag: 3, bits: 32 }), chunk('data', sound)]))
    expect(samples.map((x) => x / 32768)).toEqual([0.5, 0, 0, -0.5])
    expect(problems).toEqual([{ key: 'not_finite', severity: 'weak', values: { count: 2 } }])
  })
  it('and doubles too large for a Float32 likewise, over all channels', () => {
    const sound = new Uint8Array(new Float64Array([1e300, 0.25, Number.NaN, 0.5]).buffer)
    const clip = readWav(wav([format({ tag: 3, bits: 64, channels: 2 }), chunk('data', sound)]), 'x.wav')
    expect(clip.channels.map((channel) => Array.from(channel))).toEqual([
      [0, 0],
      [0.25, 0.5],
    ])
    expect(clip.problems).toEqual([{ key: 'not_finite', severity: 'weak', values: { count: 2 } }])
  })
})

describe('channel count, block size and byte rate that disagree', () => {
  it('are settled by the two that agree', () => {
    const cases: [FormatFields, number[][]][] = [
      [
        { channels: 2, blockBytes: 7, byteRate: 48_000 * 4 },
        [
          [100, 300],
          [-200, -400],
        ],
      ],
      [{ channels: 65_535, blockBytes: 2, byteRate: 48_000 * 2 }, [WHOLE]],
      [{ channels: 1, blockBytes: 4, byteRate: 48_000 * 2 }, [WHOLE]],
    ]
    for (const [fields, expected] of cases) {
      const { channels } = readWav(wav([format(fields), chunk('data', SOUND)]), 'x.wav')
      expect(channels.map((channel) => Array.from(channel, (x) => x * 32768))).toEqual(expected)
    }
  })
  it('are told when they were settled', () => {
    const { problems } = read(wav([format({ channels: 65_535, blockBytes: 2 }), chunk('data', SOUND)]))
    expect(problems).toEqual([{ key: 'header_lies', severity: 'note', values: { chunk: 'fmt' } }])
  })
  it('end the reading when no two agree', () => {
    const file = wav([format({ channels: 600, blockBytes: 2, byteRate: 1 }), chunk('data', SOUND)])
    expect(() => read(file)).toThrow(
      'clip.wav, byte 20: 600 channels of 16 bits do not make blocks of 2 bytes; save it again as PCM WAV',
    )
  })
})

describe('what cannot be read is said in one line with the mend', () => {
  const withFormat = (fields: FormatFields) => wav([format(fields), chunk('data', SOUND)])
  const text = (start: string) => Uint8Array.from(start.padEnd(40, '.'), (c) => c.charCodeAt(0))
  const cases: [string, Uint8Array, string][] = [
    ['an empty file', new Uint8Array(0), 'clip.wav: the file is empty; record it again or copy it again'],
    ['a text', text('point,along_m,file'), 'clip.wav: is not a WAV file; save it as PCM WAV'],
    ['four bytes', text('RIFF').subarray(0, 4), 'clip.wav: is not a WAV file; save it as PCM WAV'],
    ['an AVI', text('RIFF....AVI '), 'clip.wav: is not a WAV file; save it as PCM WAV'],
    ['FLAC', text('fLaC'), 'clip.wav: is a FLAC file, not a WAV; save it as PCM WAV'],
    ['M4A', text('....ftypM4A '), 'clip.wav: is an M4A or MP4 file, not a WAV; save it as PCM WAV'],
    ['no format', wav([chunk('data', SOUND)]), 'clip.wav: a WAV without a format chunk; save it as PCM WAV'],
    [
      'no sound',
      wav([format(), chunk('LIST', [1, 2])]),
      'clip.wav: a WAV without a data chunk, so without sound; record it again or copy it again',
    ],
    [
      'half a sample',
      wav([format(), chunk('data', [7])]),
      'clip.wav, byte 44: holds no sound, not one whole sample; record it again',
    ],
    [
      'a short format',
      wav([chunk('fmt ', new Uint8Array(14)), chunk('data', SOUND)]),
      'clip.wav, byte 20: the format chunk is cut short; record it again or copy the file again',
    ],
    ['A-law', withFormat({ tag: 6, bits: 8 }), 'clip.wav, byte 20: holds A-law sound; save it as PCM WAV'],
    ['mu-law', withFormat({ tag: 7, bits: 8 }), 'clip.wav, byte 20: holds mu-law sound; save it as PCM WAV'],
    ['ADPCM', withFormat({ tag: 17, bits: 4 }), 'clip.wav, byte 20: holds IMA ADPCM sound; save it as PCM WAV'],
    ['MP3 in a WAV', withFormat({ tag: 85 }), 'clip.wav, byte 20: holds MP3 sound; save it as PCM WAV'],
    [
      'what nobody knows',
      withFormat({ tag: 0x1234 }),
      'clip.wav, byte 20: holds an unknown kind (0x1234) of sound; save it as PCM WAV',
    ],
    [
      'A-law in an extensible format',
      withFormat({ bits: 8, extensible: { validBits: 8, tag: 6 } }),
      'clip.wav, byte 20: holds A-law sound; save it as PCM WAV',
    ],
    [
      'an extensible format cut short',
      withFormat({ tag: 0xfffe }),
      'clip.wav, byte 20: an extensible format without its subformat; save it as PCM WAV',
    ],
    ['no channel', withFormat({ channels: 0 }), 'clip.wav, byte 20: names no channel; save it again as PCM WAV'],
    [
      'a rate too low',
      withFormat({ rateHz: 7999 }),
      'clip.wav, byte 20: the sample rate is 7999 Hz; save it with one from 8000 to 192000 Hz',
    ],
    [
      'a rate too high',
      withFormat({ rateHz: 192_001 }),
      'clip.wav, byte 20: the sample rate is 192001 Hz; save it with one from 8000 to 192000 Hz',
    ],
    [
      'a depth that is none',
      withFormat({ bits: 0 }),
      'clip.wav, byte 20: 0-bit pcm samples cannot be read; save it as 16, 24 or 32-bit PCM WAV',
    ],
    [
      'a float of 16 bits',
      withFormat({ tag: 3, bits: 16 }),
      'clip.wav, byte 20: 16-bit float samples cannot be read; save it as 16, 24 or 32-bit PCM WAV',
    ],
  ]
  it.each(cases)('%s', (_, bytes, message) => {
    expect(() => readWav(bytes, 'clip.wav')).toThrow(FormatError)
    expect(() => readWav(bytes, 'clip.wav')).toThrow(message)
  })
  it.each([8000, 192_000])('but %i Hz are read', (rateHz) => {
    expect(readWav(withFormat({ rateHz }), 'x.wav').sampleRateHz).toBe(rateHz)
  })
})
