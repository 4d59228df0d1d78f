import { expect, it } from 'vitest'
import { AUDIO_PROBLEMS, audioProblem } from '../../../shared/audio/problems'
import { CLIP_PROBLEMS } from '../../../shared/words/clipProblems'

it('every problem has its words, and every word its problem', () => {
  expect(Object.keys(CLIP_PROBLEMS).sort()).toEqual(Object.keys(AUDIO_PROBLEMS).sort())
})

it('the words use no value that the problem does not carry', () => {
  for (const [key, { text, mend }] of Object.entries(CLIP_PROBLEMS)) {
    const used = [...`${text} ${mend}`.matchAll(/\{(\w+)\}/g)].map(([, name]) => name!)
    const carried: readonly string[] = AUDIO_PROBLEMS[key as keyof typeof AUDIO_PROBLEMS].values
    expect(used.filter((name) => !carried.includes(name))).toEqual([])
  }
})

it('a problem is plain data', () => {
  expect(audioProblem('mains_hum', 'note', { hz: 50 })).toEqual({
    key: 'mains_hum',
    severity: 'note',
    values: { hz: 50 },
  })
})
