import { unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { writeWav } from '../../../../shared/audio/writeWav'
import { sha256 } from '../../../../shared/base/sha256'
import { utf8Bytes } from '../../../../shared/base/utf8Bytes'
import { clipEvidence } from '../../../../shared/evidence/clipEvidence'
import { makeQuestion } from '../../../../shared/practice/drills/makeQuestion'
import { misleading } from '../../../../shared/practice/set/misleading'
import { openSet } from '../../../../shared/practice/set/openSet'
import { packSet } from '../../../../shared/practice/set/packSet'
import type { PracticeSet, SetClip } from '../../../../shared/practice/set/practiceSet'
import { readScores, writeScores } from '../../../../shared/practice/set/scoresFile'
import { setQuestion } from '../../../../shared/practice/set/setQuestion'

const digest = (bytes: Uint8Array) => Promise.resolve(sha256(bytes))
const sourceOf = (bytes: Uint8Array) => ({
  size: bytes.length,
  read: (from: number, to: number) => Promise.resolve(bytes.slice(from, to)),
})

const tone = (hz: number) => {
  const samples = Float32Array.from({ length: 4000 }, (_, n) => 0.1 * Math.sin(0.000785 * hz * n))
  return writeWav({ channels: [samples], sampleRateHz: 8000, encoding: { kind: 'pcm', bits: 16 }, problems: [] })
}
const clip = (label: 'leak' | 'no leak', hz: number): SetClip => ({
  file: `${hz}.wav`,
  label,
  source: 'here',
  consent: 'own',
  licence: 'CC0-1.0',
  invented: true,
  job: '',
  alongM: 3.5,
  leakAtM: null,
  cover: 'grass',
  device: '',
  wav: tone(hz),
  without: label === 'leak' ? tone(hz + 1) : null,
})
const SET = { name: 'First "ears"', drill: 'leak' as const, clips: [clip('leak', 300), clip('no leak', 500)] }
const packed = () => packSet(SET, digest)
const opened = async (zip: Uint8Array) => openSet(sourceOf(zip), 'ears.zip', digest)

describe('a set as a file', () => {
  it('comes back as it went out, the same bytes every time, and any unzipper reads it', async () => {
    const { id, zip } = await packed()
    expect(await opened(zip)).toEqual({ ...SET, id })
    expect((await packed()).zip).toEqual(zip)
    expect(Object.keys(unzipSync(zip))).toEqual(['set.json', 'clips/001.wav', 'clips/001-without.wav', 'clips/002.wav'])
  })

  it('that was changed, cut or is something else is refused with the mend', async () => {
    const { zip } = await packed()
    const flipped = zip.slice()
    flipped[3000]! ^= 1
    await expect(opened(flipped)).rejects.toThrow(/damaged|not what the set says/)
    await expect(opened(zip.slice(0, 2500))).rejects.toThrow(/ask for the set again|is missing/)
    await expect(opened(utf8Bytes('hello'))).rejects.toThrow('ears.zip: is no zip')
    await expect(packSet({ ...SET, clips: [] }, digest)).rejects.toThrow('not 0')
  })
})

describe('scores', () => {
  const three = async (): Promise<PracticeSet> => opened((await packed()).zip)

  it('come back as they went out', async () => {
    const set = await three()
    const scores = { setId: set.id, by: 'Ada', answers: [{ clip: 1, said: 'leak' }] }
    expect(readScores(utf8Bytes(writeScores(scores)), 's.json', [set])).toEqual(scores)
  })

  it('of another set, of a clip that is not there, or of no answer there is are refused', async () => {
    const set = await three()
    const read = (change: object) =>
      readScores(utf8Bytes(writeScores({ setId: set.id, by: '', answers: [], ...change })), 's.json', [set])
    expect(() => read({ setId: 'other' })).toThrow('s.json, set: is of a set that is not on this device')
    expect(() => read({ answers: [{ clip: 9, said: 'leak' }] })).toThrow('s.json, answers[0].clip')
    expect(() => read({ answers: [{ clip: 0, said: 'wind' }] })).toThrow('is "wind"; write one of leak, no leak')
    const twice = [0, 0].map((at) => ({ clip: at, said: 'leak' }))
    expect(() => read({ answers: twice })).toThrow('s.json, answers[1].clip: is 0 again')
    expect(() => readScores(utf8Bytes('{}'), 's.json', [set])).toThrow('s.json, format')
  })

  it('tell which clips mislead most: the surest first, with what they were taken for', async () => {
    const set = await three()
    const scores = (said: [string, string]) => ({
      setId: set.id,
      by: '',
      answers: said.map((each, at) => ({ clip: at, said: each })),
    })
    const rows = misleading(set, [
      scores(['leak', 'leak']),
      scores(['no leak', 'leak']),
      scores(['leak', 'leak']),
      { ...scores(['no leak', 'no leak']), setId: 'other' },
    ])
    expect(rows.map(({ clip, wrong, answers, takenFor }) => [clip, wrong, answers, takenFor])).toEqual([
      [1, 3, 3, 'leak'],
      [0, 1, 3, 'no leak'],
    ])
    expect(rows[0]!.wrongShare.low).toBeGreaterThan(rows[1]!.wrongShare.low)
  })
})

it('a clip of a set is asked with the bubbling that its evidence has, below the ceiling', () => {
  const { clips } = makeQuestion({ drill: 'what', seed: 'for a set', levelDb: 15 })
  const { clip, without } = clips[0]!
  const question = setQuestion({
    drill: 'leak',
    label: 'leak',
    wav: writeWav(clip),
    without: without && writeWav(without),
  })
  expect(question.machine!.bubbling).toBe(clipEvidence(question.clips[0]!.clip).bubbling)
  expect(Math.max(...question.clips[0]!.clip.channels[0]!.map(Math.abs))).toBeLessThan(10 ** (-12 / 20))
  expect(question.clips[0]!.without).not.toBeNull()
})
