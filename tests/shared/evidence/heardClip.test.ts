import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import { readWav } from '../../../shared/audio/readWav'
import { InputError } from '../../../shared/base/errors'
import { clipEvidence } from '../../../shared/evidence/clipEvidence'
import { heardClip } from '../../../shared/evidence/heardClip'

const wav = readFileSync(resolve(import.meta.dirname, '../../../demo-audio/06-on.wav'))

it('a clip that can be read is heard', () => {
  const clip = readWav(wav, '06-on.wav')
  expect(heardClip(() => clip)).toEqual({ evidence: clipEvidence(clip), problems: [] })
})

it('a clip that cannot be read says why, without its name', () => {
  const { evidence, problems } = heardClip(() => readWav(Uint8Array.from([1, 2, 3]), 'secret-name.wav'))
  expect(evidence).toBeNull()
  expect(problems).toEqual([{ key: 'unreadable', severity: 'spoilt', values: { why: expect.any(String) } }])
  expect(JSON.stringify(problems)).not.toContain('secret-name')
})

it('a fault of the program is none of the clip', () => {
  const fault = () => {
    throw new InputError('sampleRateHz is 0; must be above 0')
  }
  expect(() => heardClip(fault)).toThrow(InputError)
})
