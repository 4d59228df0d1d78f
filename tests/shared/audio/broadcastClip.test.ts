import { describe, expect, it } from 'vitest'
import wavefile from 'wavefile/dist/wavefile.js'
import { broadcastClip } from '../../../shared/audio/broadcastClip'
import { plainClips } from '../../../shared/audio/plainClips'
import { readWav } from '../../../shared/audio/readWav'
import { writeWav } from '../../../shared/audio/writeWav'
import { noiseClip } from '../../support/runCli'

const NOTES = {
  description: 'point 6, 5 m along, air on, take 1',
  originator: 'Yardhark',
  originatorReference: 'abc',
  date: '2026-09-21',
  time: '07:30:15',
}
const MARKS = [
  { timeS: 0.2, label: 'ring 810 Hz' },
  { timeS: 0.05, label: 'ring 640 Hz' },
]
const clip = Uint8Array.from(noiseClip(0.5))

const isAmong = (pieces: readonly Uint8Array[], wanted: Uint8Array) =>
  pieces.findIndex((piece) => Buffer.compare(piece, wanted) === 0)

describe('a clip as Broadcast Wave', () => {
  it('gives the clip back byte for byte', () => {
    for (const marks of [MARKS, []]) {
      expect(isAmong(plainClips(broadcastClip(clip, NOTES, marks)!), clip)).toBeGreaterThanOrEqual(0)
    }
  })

  it('has a bext chunk before the sound and cue points in order of time, as another reader sees them', () => {
    const read = new wavefile.WaveFile(broadcastClip(clip, NOTES, MARKS)!)
    expect(read.bext.description).toMatch(/^point 6, 5 m along, air on, take 1/)
    expect(read.bext.originationDate).toBe('2026-09-21')
    expect(read.bext.timeReference).toEqual([(7 * 3600 + 30 * 60 + 15) * 8000, 0])
    expect(read.bext.codingHistory).toMatch(/^A=PCM,F=8000,W=16,M=mono\r\n/)
    expect(read.listCuePoints().map(({ dwSampleOffset, label }) => [dwSampleOffset, label])).toEqual([
      [400, 'ring 640 Hz'],
      [1600, 'ring 810 Hz'],
    ])
  })

  it('sounds the same', () => {
    expect(readWav(broadcastClip(clip, NOTES, MARKS)!, 'a')).toEqual(readWav(clip, 'a'))
  })

  it("keeps the recorder's own bext chunk, and gives it back with the clip", () => {
    const sound = readWav(clip, 'a')
    const own = writeWav(sound, { broadcast: { ...NOTES, originator: 'a recorder' } })
    const made = broadcastClip(own, NOTES, MARKS)!
    expect(new wavefile.WaveFile(made).bext.originator).toMatch(/^a recorder/)
    expect(isAmong(plainClips(made), own)).toBeGreaterThanOrEqual(0)
  })

  it('leaves marks out that lie outside the sound', () => {
    const made = broadcastClip(clip, NOTES, [{ timeS: -1, label: 'before' }, { timeS: 9, label: 'after' }, ...MARKS])!
    expect(new wavefile.WaveFile(made).listCuePoints()).toHaveLength(2)
  })

  it('is not made of what could not be told apart again', () => {
    const sound = readWav(clip, 'a')
    const withCues = writeWav(sound, { cues: MARKS })
    const longer = Uint8Array.from([...clip, 0, 0])
    const oddHeader = clip.slice()
    oddHeader[4]! ^= 1
    for (const bytes of [withCues, longer, oddHeader, clip.subarray(0, 4000), new Uint8Array(), new Uint8Array(100)]) {
      expect(broadcastClip(bytes, NOTES, MARKS)).toBeNull()
      expect(isAmong(plainClips(bytes), bytes)).toBeGreaterThanOrEqual(0)
    }
  })
})
