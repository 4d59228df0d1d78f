import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { writeWav } from '../../../shared/audio/writeWav'
import { decodeFlac } from '../../../shared/flac/decodeFlac'
import { encodeFlac } from '../../../shared/flac/encodeFlac'
import { flacOf, wavOfFlac } from '../../../shared/flac/flacClip'
import { noiseClip } from '../../support/runCli'

/** Made by FLAC's own program; see makeFlacReference.py. */
const REFERENCE = JSON.parse(
  readFileSync(resolve(import.meta.dirname, '../../reference/flacReference.json'), 'utf8'),
) as {
  readonly sounds: Readonly<
    Record<
      string,
      { wav: string; theirs: Readonly<Record<string, string>>; ours_sha256: string; back_is_as_theirs: boolean }
    >
  >
}
const bytesOf = (base64: string) => Uint8Array.from(Buffer.from(base64, 'base64'))

describe('a WAV file as FLAC', () => {
  it.each(Object.entries(REFERENCE.sounds))(
    '%s: goes both ways with the program of the format [RFC9639]',
    (_, sound) => {
      const wav = bytesOf(sound.wav)
      const ours = flacOf(wav)!
      expect(createHash('sha256').update(ours).digest('hex')).toBe(sound.ours_sha256) // of which it was told:
      expect(sound.back_is_as_theirs).toBe(true)
      expect(wavOfFlac(ours)).toEqual(wav)
      for (const theirs of Object.values(sound.theirs)) expect(wavOfFlac(bytesOf(theirs))).toEqual(wav)
      expect(ours.length).toBeLessThan(wav.length)
    },
  )

  it('comes back byte for byte, whatever the sound, and the same sound gives the same bytes', () => {
    const sample = fc.oneof(fc.double({ min: -1, max: 1, noNaN: true }), fc.constantFrom(-1, 0, 1))
    fc.assert(
      fc.property(
        fc.constantFrom('pcm16', 'pcm24'),
        fc.integer({ min: 1, max: 3 }),
        fc.array(sample, { minLength: 1, maxLength: 200 }),
        fc.integer({ min: 1, max: 60 }),
        (encoding, channelCount, pattern, repeats) => {
          const one = Float32Array.from(
            { length: 2 * pattern.length * repeats },
            (_, n) => pattern[n % pattern.length]!,
          )
          const channels = Array.from({ length: channelCount }, (_, i) => one.map((value) => value / (i + 1)))
          const pcm = { kind: 'pcm', bits: 16 } as const // of the clip; what is written is told apart
          const wav = writeWav({ channels, sampleRateHz: 48_000, encoding: pcm, problems: [] }, { encoding })
          const flac = flacOf(wav)!
          expect(Buffer.compare(wavOfFlac(flac)!, wav)).toBe(0)
          expect(Buffer.compare(flacOf(wav)!, flac)).toBe(0)
        },
      ),
      { seed: 9639, numRuns: 60 },
    )
  })

  it('is none of what is no plain WAV: floats, texts, a file that is not in perfect order', () => {
    const channels = [Float32Array.of(0, 0.5, -0.5, 1)]
    const sound = { channels, sampleRateHz: 8000, encoding: { kind: 'pcm', bits: 16 }, problems: [] } as const
    const float = writeWav(sound, { encoding: 'float32' })
    expect(flacOf(float)).toBeNull()
    expect(flacOf(new Uint8Array())).toBeNull()
    const wav = noiseClip(0.1)
    expect(flacOf(wav.subarray(0, wav.length - 2))).toBeNull()
  })
})

describe('a FLAC stream that nobody vouches for', () => {
  const flac = flacOf(noiseClip(0.2))!

  it('never gives other samples: a damaged frame is told by its check, whichever byte is changed', () => {
    const whole = decodeFlac(flac, 1e6)!
    fc.assert(
      fc.property(fc.nat(flac.length - 1), fc.integer({ min: 1, max: 255 }), (at, change) => {
        const changed = flac.slice()
        changed[at]! ^= change
        const decoded = decodeFlac(changed, 1e6)
        if (decoded === null || at < 42 + 100) return // what stands before the sound is checked by the bag's digest
        expect(decoded.channels).toEqual(whole.channels)
      }),
      { seed: 16, numRuns: 300 },
    )
  })

  it('is refused where it breaks off, and where it tells of more than there may be, before that is allocated', () => {
    for (let at = 0; at < flac.length; at += 97) expect(decodeFlac(flac.subarray(0, at), 1e6)).toBeNull()
    expect(decodeFlac(flac, 100)).toBeNull()
    const silence = encodeFlac({ channels: [new Int32Array(1_000_000)], bits: 16, sampleRateHz: 8000 }, [])
    expect(silence.length).toBeLessThan(4000)
    expect(decodeFlac(silence, 999_999)).toBeNull()
    const lying = silence.slice()
    lying.set([0xff, 0xff, 0xff, 0xff], 22) // the count of samples
    expect(decodeFlac(lying, 50e6)).toBeNull()
    expect(wavOfFlac(silence)).toBeNull()
  })
})
