import { describe, expect, it } from 'vitest'
import { tapeDistance } from '../../../shared/line/tapeDistance'
import { sentence, wordsOf } from '../../../shared/words/sentence'

const FEET = { length: 'ft', pressure: 'psi' } as const
const POINTS = [
  { point: 6, alongM: 5 },
  { point: 7, alongM: 6 },
]

describe('the sentence of a key', () => {
  it('holds its values with their units', () => {
    const values = { from_m: 5.05, to_m: 5.62, window_probability: 0.8 }
    expect(sentence('answer_window_located', values)).toBe('It lies between 5.05 m and 5.62 m with 80 % probability.')
    expect(sentence('answer_window_located', values, FEET)).toBe(
      'It lies between 16 ft 7 in and 18 ft 5 1/2 in with 80 % probability.',
    )
  })

  it('of a tape distance reads as a person would say it', () => {
    const text = (alongM: number) => wordsOf(tapeDistance(alongM, POINTS)).text
    expect(text(5.31)).toBe('0.31 m past point 6 toward point 7')
    expect(text(5.8)).toBe('0.20 m before point 7 toward point 6')
    expect(text(5.001)).toBe('at point 6')
    expect(text(6.5)).toBe('0.50 m past point 7, the last one')
    expect(text(4)).toBe('1.00 m before point 6, the first one')
    expect(wordsOf(tapeDistance(2.5, [])).text).toBe("2.50 m from the line's start")
  })

  it('of a problem comes with what to do about it', () => {
    expect(wordsOf({ key: 'missing_file_like', values: { near: '06-ON.wav' } })).toEqual({
      text: 'The clip is not there; 06-ON.wav is.',
      mend: 'If that is the clip, write its name so.',
    })
    expect(wordsOf({ key: 'tape_at_point', values: { point: 1 } }).mend).toBeNull()
  })

  it('shows texts out of files without letting them at the terminal or at the braces', () => {
    const values = { place: 'pipe.material', value: '\u001b[2J{place}\n', known: 'pvc' }
    expect(wordsOf({ key: 'line_value_unknown', values }).text).toBe(
      'pipe.material is "\\u001b[2J{place}\\n", which is not known here and counts as other.',
    )
  })

  it('shows a key it has no words for, with its values, rather than nothing', () => {
    expect(wordsOf({ key: 'never_heard_of', values: { point: 3 } })).toEqual({
      text: 'never_heard_of, point 3',
      mend: null,
    })
    expect(wordsOf({ key: 'constructor', values: {} }).text).toBe('constructor')
  })
})
