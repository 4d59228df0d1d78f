import { describe, expect, it } from 'vitest'
import { lengthOption, parseArgs } from '../../../src/cli/args'
import { CallError } from '../../../src/cli/callError'
import { close } from '../../support/close'

const TABLE = { json: 'flag', spacing: 'value', 'spacing-ft': 'value', start: 'value', 'start-ft': 'value' } as const
const LIMITS = { low: -100, high: 100 }

const messageOf = (act: () => unknown): string => {
  try {
    act()
  } catch (error) {
    if (error instanceof CallError) return error.message
    throw error
  }
  return 'no error'
}

describe('the words of a call', () => {
  it('are sorted into options and the rest, in any order', () => {
    const { rest, options } = parseArgs(['a', '--spacing', '1.5', '--json', 'b', '--start=-2'], TABLE)
    expect(rest).toEqual(['a', 'b'])
    expect(Object.fromEntries(options)).toEqual({ spacing: '1.5', json: '', start: '-2' })
  })

  it('may give an option a negative number', () => {
    expect(parseArgs(['--start', '-2.5'], TABLE).options.get('start')).toBe('-2.5')
  })

  it('are no options after --, and neither is a dash alone', () => {
    expect(parseArgs(['-', '--', '--json', '-x'], TABLE).rest).toEqual(['-', '--json', '-x'])
  })

  it('are refused with the mend', () => {
    const message = (...words: string[]) => messageOf(() => parseArgs(words, TABLE))
    expect(message('--spacign', '1')).toBe('there is no option --spacign; did you mean --spacing?')
    expect(message('-json')).toBe('there is no option -json; did you mean --json?')
    expect(message('--wobble')).toBe('there is no option --wobble; yardhark --help lists the options')
    expect(message('--constructor')).toContain('there is no option --constructor')
    expect(message('--spacing')).toBe('--spacing needs a value after it')
    expect(message('--spacing', '--json')).toBe('--spacing needs a value after it')
    expect(message('--spacing=')).toBe('--spacing needs a value after it')
    expect(message('--json=yes')).toBe('--json takes no value; leave "yes" out')
    expect(message('--json', '--json')).toBe('--json stands twice; keep one of them')
  })
})

describe('a length in a call', () => {
  const length = (...words: string[]) => lengthOption(parseArgs(words, TABLE), 'spacing', LIMITS)

  it('is in metres, or in feet of 0.3048 m', () => {
    expect(length('--spacing', '1.5')).toBe(1.5)
    close(length('--spacing-ft', '5'), 1.524, { rel: 1e-15, because: 'one product' })
    expect(length()).toBeNull()
  })

  it('is refused with the mend', () => {
    const message = (...words: string[]) => messageOf(() => length(...words))
    expect(message('--spacing', 'wide')).toBe('--spacing is "wide"; write a number, like 1.5')
    expect(message('--spacing', '1,5')).toBe('--spacing is "1,5"; write a number, like 1.5')
    expect(message('--spacing', 'NaN')).toBe('--spacing is "NaN"; write a number, like 1.5')
    expect(message('--spacing', '1e3')).toBe('--spacing is "1e3"; write a number, like 1.5')
    expect(message('--spacing-ft', '400')).toBe('--spacing-ft is 400; a length from -100 m to 100 m is expected')
    expect(message('--spacing', '1', '--spacing-ft', '3')).toBe(
      '--spacing and --spacing-ft are both there; keep one of them',
    )
  })
})
