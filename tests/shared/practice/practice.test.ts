import { describe, expect, it } from 'vitest'
import type { PracticeAnswer } from '../../../shared/practice/answers'
import { COMES_BACK_AFTER } from '../../../shared/practice/comesBack'
import { grade } from '../../../shared/practice/drills/grade'
import { nextOrder, waitingAgain } from '../../../shared/practice/nextOrder'
import { BLOCK_ANSWERS, progress } from '../../../shared/practice/progress'
import { sensitivity } from '../../../shared/practice/score/sensitivity'
import { FIRST_STAIRS, STAIRS } from '../../../shared/practice/staircase/staircase'

/** Goes through a drill with these answers, right or wrong, and says what was asked. */
function practised(rights: readonly boolean[]): PracticeAnswer[] {
  const answers: PracticeAnswer[] = []
  for (const [i, right] of rights.entries()) {
    const { order, isRepeat } = nextOrder(answers, 'leak', 'me')
    const truth = i % 2 === 0 ? 'leak' : 'no leak'
    const said = right ? truth : i % 2 === 0 ? 'no leak' : 'leak'
    const machine = { said: 'leak', right: truth === 'leak', bubbling: 0.9, errorSpacings: null }
    answers.push({ timeS: i, order, truth, said, right, errorSpacings: null, machine, isRepeat })
  }
  return answers
}

describe('the next question', () => {
  it('is easy at first, and at the level of the stairs afterwards', () => {
    expect(nextOrder([], 'leak', 'me').order).toEqual({
      drill: 'leak',
      seed: 'me/leak/1',
      levelDb: FIRST_STAIRS.levelDb,
    })
    expect(nextOrder(practised([true, true]), 'leak', 'me').order.levelDb).toBe(STAIRS.firstDb - STAIRS.largeStepDb)
  })

  it('is what was missed, after two others, then after six, then after fifteen, and then no more', () => {
    const answers = practised([false, ...Array.from({ length: 40 }, () => true)])
    const missed = answers[0]!.order
    const again = answers.flatMap(({ order, isRepeat }, i) => (isRepeat && order.seed === missed.seed ? [i] : []))
    let at = 0
    const expected = COMES_BACK_AFTER.map((after) => (at += after + 1))
    expect(again).toEqual(expected)
    expect(answers[again[0]!]!.order).toEqual(missed)
    expect(waitingAgain(answers, 'leak')).toBe(0)
  })

  it('comes back soon again when it is missed again', () => {
    const answers = practised([false, true, true, false, true, true, true])
    expect(answers.flatMap(({ isRepeat }, i) => (isRepeat ? [i] : []))).toEqual([3, 6])
  })

  it('repeats move no stairs and count in no figures', () => {
    const answers = practised([false, true, true, false])
    expect(progress(answers, 'leak').whole!.person.count).toBe(3)
    expect(nextOrder(answers, 'leak', 'me').order.levelDb).toBe(
      nextOrder(answers.slice(0, 3), 'what', 'me').order.levelDb + 0,
    )
  })

  it('follows from the answers alone, and one drill from its own', () => {
    const answers = practised([true, false, true])
    expect(nextOrder(answers, 'leak', 'me')).toEqual(nextOrder(structuredClone(answers), 'leak', 'me'))
    expect(nextOrder(answers, 'gauge', 'me').order.seed).toBe('me/gauge/1')
    expect(nextOrder([], 'leak', 'you').order.seed).not.toBe(nextOrder([], 'leak', 'me').order.seed)
  })
})

describe('progress', () => {
  it('is in blocks over time, the machine beside the person on the same clips', () => {
    const { blocks, whole } = progress(practised(Array.from({ length: BLOCK_ANSWERS + 5 }, () => true)), 'leak')
    expect(blocks.map(({ person }) => person.count)).toEqual([BLOCK_ANSWERS, 5])
    expect(whole!.person.right).toBe(BLOCK_ANSWERS + 5)
    expect(whole!.person.sensitivity).toEqual(
      sensitivity({ hits: 13, misses: 0, falseAlarms: 0, correctRejections: 12 }),
    )
    // The machine said leak every time: no sensitivity, and far too ready.
    expect(whole!.machine!.right).toBe(13)
    expect(Math.abs(whole!.machine!.sensitivity!.dPrime)).toBeLessThan(0.1)
    expect(whole!.machine!.sensitivity!.criterion).toBeLessThan(-1)
  })

  it('tells no threshold of a handful, and has nothing to tell of no answer', () => {
    expect(progress(practised([true, true, true]), 'leak').threshold).toBeNull()
    expect(progress([], 'leak')).toEqual({ blocks: [], whole: null, threshold: null })
    expect(progress(practised(Array.from({ length: 30 }, (_, i) => i % 3 > 0)), 'leak').threshold).not.toBeNull()
  })
})

describe('a grade', () => {
  it('is right within half a spacing of the true place, with its error', () => {
    expect(grade('place', '3.40', '3')).toEqual({ right: true, errorSpacings: expect.closeTo(0.4, 9) })
    expect(grade('place', '3.40', '4')).toEqual({ right: false, errorSpacings: expect.closeTo(0.6, 9) })
    expect(grade('what', 'rain', 'wind')).toEqual({ right: false, errorSpacings: null })
  })
})
