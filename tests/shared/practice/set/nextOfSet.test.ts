import { describe, expect, it } from 'vitest'
import { progress } from '../../../../shared/practice/progress'
import { nextOfSet } from '../../../../shared/practice/set/nextOfSet'
import type { PracticeSet, SetClip } from '../../../../shared/practice/set/practiceSet'
import { setAnswers } from '../../../../shared/practice/set/setAnswers'
import { inOrder, type LoggedAnswer, type RepeatedAnswer, type SetLog } from '../../../../shared/practice/set/setLog'

const clip = (label: SetClip['label'], invented = false) => ({ label, invented }) as SetClip
const setOf = (labels: readonly SetClip['label'][]): PracticeSet => ({
  id: 'set',
  name: 'Set',
  drill: 'leak',
  clips: labels.map((label) => clip(label)),
})

/** Goes through a set; says what is told, and counts which clip was asked when. */
function walked(set: PracticeSet, say: (clip: number, isRepeat: boolean) => string) {
  const asked: string[] = []
  let log: { answers: LoggedAnswer[]; repeats: RepeatedAnswer[] } = { answers: [], repeats: [] }
  for (let i = 0; i < 100; i++) {
    const next = nextOfSet(set, log)
    if (next === null) return { asked, log }
    asked.push(`${next.clip}${next.isRepeat ? '*' : ''}`)
    const answer = { clip: next.clip, said: say(next.clip, next.isRepeat), timeS: 100 + i }
    log = next.isRepeat
      ? { ...log, repeats: [...log.repeats, { ...answer, after: log.answers.length }] }
      : { ...log, answers: [...log.answers, answer] }
  }
  throw new Error('it never ends')
}

describe('a set', () => {
  const set = setOf(['leak', 'no leak', 'leak', 'no leak', 'leak', 'leak', 'leak', 'leak', 'leak', 'leak', 'leak'])

  it('is asked clip by clip when nothing is missed', () => {
    expect(walked(set, (i) => set.clips[i]!.label).asked).toEqual(set.clips.map((_, i) => String(i)))
  })

  it('has what was missed come back after two others, after six more and after fifteen, as the drills have it', () => {
    const { asked } = walked(set, (i, isRepeat) => (i === 1 && !isRepeat ? 'leak' : set.clips[i]!.label))
    expect(asked).toEqual(['0', '1', '2', '3', '1*', '4', '5', '6', '7', '8', '9', '1*', '10'])
  })

  it('ends only when everything missed was told right once since, and then ends', () => {
    const { asked, log } = walked(set, (_, isRepeat) => (isRepeat ? 'no leak' : 'leak'))
    expect(log.answers).toHaveLength(11)
    expect(asked.filter((each) => each.endsWith('*'))).toEqual(expect.arrayContaining(['1*', '3*']))
    expect(nextOfSet(set, log)).toBeNull()
  })

  it('goes on from what is kept, however often the page is closed, also from what an older version kept', () => {
    const older: SetLog = {
      answers: [
        { clip: 0, said: 'leak' },
        { clip: 1, said: 'leak' },
      ],
    }
    expect(nextOfSet(set, older)).toEqual({ clip: 2, isRepeat: false })
    const more: SetLog = { answers: [...older.answers, { clip: 2, said: 'leak' }, { clip: 3, said: 'no leak' }] }
    expect(nextOfSet(set, more)).toEqual({ clip: 1, isRepeat: true })
    expect(inOrder({ ...more, repeats: [{ clip: 1, said: 'no leak', after: 4 }] }).map((each) => each.clip)).toEqual([
      0, 1, 2, 3, 1,
    ])
  })
})

describe('answers to clips of sets', () => {
  const answers: LoggedAnswer[] = [
    { clip: 0, said: 'leak', timeS: 30, levelDb: 9 },
    { clip: 1, said: 'leak', timeS: 20, levelDb: null },
    { clip: 2, said: 'leak' },
  ]
  const set = {
    ...setOf(['leak', 'no leak', 'leak', 'leak']),
    clips: [clip('leak'), clip('no leak'), clip('leak', true)],
  }
  const machine = [
    { clip: 0, said: 'no leak' },
    { clip: 1, said: 'no leak' },
  ]
  const told = (invented: boolean) => setAnswers([{ set, log: { answers }, machine }], 'leak', invented)

  it('make progress over time, recorded clips apart from invented ones, with the machine beside', () => {
    expect(told(false).map(({ timeS, right, machine: m }) => [timeS, right, m?.right])).toEqual([
      [20, false, true],
      [30, true, false],
    ])
    const { blocks, whole, threshold } = progress(told(false), 'leak')
    expect(whole).toMatchObject({ person: { count: 2, right: 1 }, machine: { count: 2, right: 1 } })
    expect(whole!.person.sensitivity).not.toBeNull()
    expect(blocks).toMatchObject([{ fromS: 20, levelDb: 9 }])
    expect(threshold).toBeNull()
    expect(progress(told(true), 'leak').blocks).toMatchObject([{ fromS: 0, levelDb: null, machine: null }])
    expect(setAnswers([{ set, log: { answers }, machine }], 'what', false)).toEqual([])
  })

  it('of kinds of sound put person and machine to the one question that both answer', () => {
    const kinds: PracticeSet = { ...set, drill: 'what', clips: [clip('bubbling'), clip('rain'), clip('wind')] }
    const said = ['bubbling', 'wind', 'wind'].map((word, i) => ({ clip: i, said: word, timeS: i }))
    const theirs = ['bubbling', 'something else', 'bubbling'].map((word, i) => ({ clip: i, said: word }))
    const { whole } = progress(
      setAnswers([{ set: kinds, log: { answers: said }, machine: theirs }], 'what', false),
      'what',
    )
    expect(whole!.person.right).toBe(2)
    expect(whole!.machine).toBeNull()
    expect(whole!.alike).toMatchObject({ person: { right: 3, count: 3 }, machine: { right: 2, count: 3 } })
  })
})
