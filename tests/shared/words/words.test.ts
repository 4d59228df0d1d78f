import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Wording } from '../../../shared/words/wording'
import { WORDS } from '../../../shared/words/words'

const root = resolve(import.meta.dirname, '../../..')
const WORDINGS = Object.entries<Wording>(WORDS)

const sources = ['shared', 'src'].flatMap((top) =>
  readdirSync(join(root, top), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => ({ name: `${top}/${name}`, code: readFileSync(join(root, top, name), 'utf8') })),
)
const users = sources.filter(({ name }) => !name.startsWith('shared/words/'))
const literals = new Set(
  users.flatMap(({ code }) => [...code.matchAll(/(['"`])(\w+)\1|^\s*(\w+): \{/gm)].map((m) => m[2] ?? m[3]!)),
)

/** Keys beside `key:`, as problems, reasons and tape distances carry them. */
const keysIn = (code: string) =>
  [...code.matchAll(/\bkey: ((?:[^,;{}\n]|\n\s*[?:|])+)/g)].flatMap(([, value]) =>
    [...value!.matchAll(/['"]([a-z]\w*_\w+)['"]/g)].map(([, key]) => key!),
  )

describe('words', () => {
  it('are there for every key that the core and the shells use', () => {
    const used = new Set(users.flatMap(({ code }) => keysIn(code)))
    expect(used.size).toBeGreaterThan(15)
    expect([...used].filter((key) => !Object.hasOwn(WORDS, key))).toEqual([])
  })

  it('are all used somewhere', () => {
    expect(WORDINGS.map(([key]) => key).filter((key) => !literals.has(key))).toEqual([])
  })

  it('stand in one list only', () => {
    const lists = sources.filter(
      ({ name, code }) => name.startsWith('shared/words/') && code.includes('Record<string, Wording>'),
    )
    const keys = lists.flatMap(({ code }) => [...code.matchAll(/^ {2}(\w+): \{/gm)].map(([, key]) => key!))
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([])
    expect([...keys].sort()).toEqual(Object.keys(WORDS).sort())
  })

  it('are plain ASCII without markup, so that they read on any terminal and page', () => {
    const odd = WORDINGS.filter(
      ([, { text, mend = '' }]) => !/^[\x20-\x7e]*$/.test(text + mend) || /[<>]/.test(text + mend),
    )
    expect(odd).toEqual([])
  })

  it('are sentences, but for headings, labels, commands and the tape, which continues one; and so is every mend', () => {
    const isSentence = (text: string) => /^(?:[A-Z]|\{\w+\})/.test(text) && /[.?]$/.test(text)
    const isPart = (key: string) => /^(?:tape|heading|label|do)_/.test(key)
    const wrong = WORDINGS.filter(
      ([key, { text, mend }]) => isSentence(text) === isPart(key) || (mend !== undefined && !isSentence(mend)),
    )
    expect(wrong).toEqual([])
  })

  it('are short: nobody reads long ones in the rain', () => {
    expect(WORDINGS.filter(([, { text, mend = '' }]) => text.length > 200 || mend.length > 200)).toEqual([])
  })

  it('name values in the way of our files', () => {
    const names = WORDINGS.flatMap(([, { text, mend = '' }]) =>
      [...(text + mend).matchAll(/\{([^}]*)\}/g)].map((m) => m[1]!),
    )
    expect(names.filter((name) => !/^[a-z]+(?:_[a-z0-9]+)*$/.test(name))).toEqual([])
  })
})
