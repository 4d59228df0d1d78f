import { nearestWord } from '../../shared/base/nearestWord'
import { printable, shown } from '../../shared/base/shown'
import { METRES_PER_FOOT } from '../../shared/base/units'
import { CallError } from './callError'

/** Option → whether a value follows it. */
export type OptionTable = Readonly<Record<string, 'value' | 'flag'>>

export interface Args {
  readonly rest: readonly string[]
  readonly options: ReadonlyMap<string, string>
}

/**
 * Sorts the words of a call.
 *
 * `--name value`, `--name=value`, flags, and `--` before words that begin with a dash; a value may be a negative number.
 *
 * @throws {CallError} an option that is not in the table, stands twice, or lacks its value or has one too many.
 */
export function parseArgs(words: readonly string[], table: OptionTable): Args {
  const rest: string[] = []
  const options = new Map<string, string>()
  const queue = [...words]
  while (queue.length > 0) {
    const word = queue.shift()!
    if (word === '--') return { rest: [...rest, ...queue], options }
    if (!word.startsWith('-') || word === '-') {
      rest.push(word)
      continue
    }
    const { name, inlineValue } = splitOption(word, table)
    if (options.has(name)) throw new CallError(`--${name} stands twice; keep one of them`)
    options.set(name, table[name] === 'flag' ? flagValue(name, inlineValue) : optionValue(name, inlineValue, queue))
  }
  return { rest, options }
}

function splitOption(word: string, table: OptionTable): { name: string; inlineValue: string | null } {
  const [, told, inlineValue = null] = /^-{1,2}([^=]*)(?:=(.*))?$/s.exec(word)!
  const name = word === '-h' ? 'help' : told!
  if ((word.startsWith('--') || word === '-h') && Object.hasOwn(table, name)) return { name, inlineValue }
  const near = nearestWord(name, Object.keys(table)) ?? (Object.hasOwn(table, name) ? name : null)
  const mend = near === null ? 'yardhark --help lists the options' : `did you mean --${near}?`
  throw new CallError(`there is no option ${printable(word.split('=')[0]!, 60)}; ${mend}`)
}

function flagValue(name: string, inlineValue: string | null): string {
  if (inlineValue !== null) throw new CallError(`--${name} takes no value; leave ${shown(inlineValue)} out`)
  return ''
}

function optionValue(name: string, inlineValue: string | null, queue: string[]): string {
  const value = inlineValue ?? (looksLikeOption(queue[0]) ? undefined : queue.shift())
  if (value === undefined || value === '') throw new CallError(`--${name} needs a value after it`)
  return value
}

function looksLikeOption(word: string | undefined): boolean {
  return word === undefined || (word.startsWith('-') && !/^-[\d.]/.test(word))
}

/**
 * A length told as `--name` in metres or `--name-ft` in feet.
 *
 * @returns m; `null` when neither was told.
 * @throws {CallError} both; no number; outside the limits.
 */
export function lengthOption(args: Args, name: string, limits: { low: number; high: number }): number | null {
  const metres = args.options.get(name)
  const feet = args.options.get(`${name}-ft`)
  if (metres !== undefined && feet !== undefined) {
    throw new CallError(`--${name} and --${name}-ft are both there; keep one of them`)
  }
  const told = metres ?? feet
  if (told === undefined) return null
  const option = metres === undefined ? `--${name}-ft` : `--${name}`
  if (!/^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/.test(told)) {
    throw new CallError(`${option} is ${shown(told)}; write a number, like 1.5`)
  }
  const lengthM = Number(told) * (metres === undefined ? METRES_PER_FOOT : 1)
  if (!(lengthM >= limits.low && lengthM <= limits.high)) {
    throw new CallError(
      `${option} is ${printable(told, 60)}; a length from ${limits.low} m to ${limits.high} m is expected`,
    )
  }
  return lengthM
}
