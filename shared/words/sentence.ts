import { printable } from '../base/shown'
import { formatQuantity } from './formatQuantity'
import { METRIC, type ShownUnits } from './shownUnits'
import { wordingOf } from './spoken'
import type { WORDS, WordKey } from './words'

/** Names between braces in a text. */
type Placeholder<Text> = Text extends `${string}{${infer Name}}${infer Rest}` ? Name | Placeholder<Rest> : never

type TextsOf<Entry> = Entry extends { text: infer Text; mend: infer Mend }
  ? Text | Mend
  : Entry extends { text: infer Text }
    ? Text
    : never

/** The values a key's sentence needs, by name. */
export type WordValues<Key extends WordKey> = Readonly<
  Record<Placeholder<TextsOf<(typeof WORDS)[Key]>>, number | string>
>

/**
 * The sentence of a key that is known when the program is built.
 *
 * @param values Numbers in the unit at the end of their names; texts as they are.
 */
export function sentence<Key extends WordKey>(key: Key, values: WordValues<Key>, units: ShownUnits = METRIC): string {
  return filled(wordingOf(key)?.text ?? key, values, units)
}

/** A key of the core with its values: a reason, a problem, a tape distance. */
export interface Keyed {
  readonly key: string
  readonly values: Readonly<Record<string, number | string>>
}

/**
 * What a reason or problem of the core says, and what to do about it.
 *
 * @returns `mend` is `null` where there is nothing to do. A key without words, which the tests do not let pass, is shown
 *   itself with its values: a strange word in an answer is better than no answer.
 */
export function wordsOf({ key, values }: Keyed, units: ShownUnits = METRIC): { text: string; mend: string | null } {
  const wording = wordingOf(key)
  if (wording === undefined) {
    const told = Object.entries(values).map(([name, value]) => `${name} ${value}`)
    return { text: printable([key, ...told].join(', ')), mend: null }
  }
  return {
    text: filled(wording.text, values, units),
    mend: wording.mend === undefined ? null : filled(wording.mend, values, units),
  }
}

/** What somebody wrote down, or a list made of it: it is never cut short, as a name in a message is. */
const WRITTEN: ReadonlySet<string> = new Set(['said', 'isolation', 'note', 'steps', 'list', 'what'])

function filled(text: string, values: Readonly<Record<string, number | string>>, units: ShownUnits): string {
  return text.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = Object.hasOwn(values, name) ? values[name]! : '?'
    if (typeof value === 'number') return formatQuantity(name, value, units)
    return WRITTEN.has(name) ? printable(value, Number.POSITIVE_INFINITY) : printable(value)
  })
}
