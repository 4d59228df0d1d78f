import { expect, it } from 'vitest'
import { jsonLine, table, wrapped } from '../../../src/cli/print'

it('puts text to the left and numbers to the right, and no spaces at the ends of lines', () => {
  const rows = [
    ['clip', 's', 'note'],
    ['é.wav', '12.5', ''],
  ]
  expect(table(rows, [true, false, true])).toBe('clip      s  note\né.wav  12.5\n')
})

it('breaks text between words, indents what follows, and lets long words stand over', () => {
  expect(wrapped('one two three', 9, 1)).toBe(' one two\n   three\n')
  expect(wrapped('incomprehensible', 5, 0)).toBe('incomprehensible\n')
  for (const line of wrapped('word '.repeat(60).trim(), 40, 2).trimEnd().split('\n')) {
    expect(line.length).toBeLessThanOrEqual(40)
  }
})

it('writes JSON that steers no terminal and reads back as it was', () => {
  const value = { file: 'a\u009b2J\u007f\u001b[1m\n\u202e"\\.wav', list: [1.5, null, 'Süd 💧 \ud800'] }
  const line = jsonLine(value)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not come through
  expect(line).toMatch(/^[^\u0000-\u001f\u007f-\u009f\u202a-\u202e]+\n$/)
  expect(JSON.parse(line)).toEqual(value)
  expect(line).toContain('Süd 💧')
})
