import { FormatError } from './errors'
import { shown } from './shown'

/** Deepest nesting of lists and objects that is read. Chosen: far more than any of our formats needs. */
const MAX_DEPTH = 32

/**
 * Reads JSON text, strictly by RFC 8259, and says in which line it is wrong.
 *
 * Engines word and place their own parse errors each in another way, take the last of two equal keys without a word,
 * and turn 1e999 into Infinity; so this reader stands in front of every JSON file that a person or a stranger wrote.
 *
 * @param text     The whole file. A byte order mark at its start is allowed.
 * @param fileName For messages.
 * @returns Plain data. Objects have only own keys, `__proto__` among them if the file has it. Numbers are finite, never −0.
 * @throws {FormatError} anything that is not JSON, a key twice in one object, a number too large for a double, more
 *   than 32 levels; with the line.
 * @see IETF RFC 8259, sections 2 to 7. [RFC8259] in sources.ts
 */
export function parseJson(text: string, fileName: string): unknown {
  const reader = new JsonReader(text, fileName)
  const value = reader.value(0)
  reader.end()
  return value
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const PLAIN_TEXT = /[^"\\\p{Cc}]+/uy
const WORD = /[\w.+-]+/y
const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
}

/** Lives for one call: the text and how far it has been read. */
class JsonReader {
  private at: number

  constructor(
    private readonly text: string,
    private readonly file: string,
  ) {
    this.at = text.startsWith('\ufeff') ? 1 : 0
  }

  value(depth: number): unknown {
    if (depth > MAX_DEPTH) this.fail(`lists and objects are nested more than ${MAX_DEPTH} deep; make it flatter`)
    this.space()
    const next = this.text[this.at]
    if (next === '{') return this.object(depth)
    if (next === '[') return this.list(depth)
    if (next === '"') return this.string()
    return this.numberOrWord()
  }

  end(): void {
    this.space()
    if (this.at < this.text.length) this.fail(`${this.here()} stands after the end; remove it`)
  }

  private object(depth: number): Record<string, unknown> {
    const result: Record<string, unknown> = {}
    this.at++
    if (this.take('}')) return result
    do {
      this.space()
      if (this.text[this.at] !== '"') this.fail(`a key in double quotes is expected, not ${this.here()}`)
      const key = this.string()
      if (Object.hasOwn(result, key)) this.fail(`the key ${shown(key)} stands twice; keep one of them`)
      if (!this.take(':')) this.fail(`a colon is expected after the key ${shown(key)}, not ${this.here()}`)
      const value = this.value(depth + 1)
      Object.defineProperty(result, key, { value, writable: true, enumerable: true, configurable: true })
    } while (this.take(','))
    if (!this.take('}')) this.fail(`a comma or } is expected, not ${this.here()}`)
    return result
  }

  private list(depth: number): unknown[] {
    const result: unknown[] = []
    this.at++
    if (this.take(']')) return result
    do result.push(this.value(depth + 1))
    while (this.take(','))
    if (!this.take(']')) this.fail(`a comma or ] is expected, not ${this.here()}`)
    return result
  }

  private string(): string {
    let result = ''
    this.at++
    while (this.text[this.at] !== '"') {
      const plain = this.match(PLAIN_TEXT)
      if (plain !== null) result += plain
      else if (this.text[this.at] === '\\') result += this.escape()
      else if (this.at >= this.text.length) this.fail('a text has no closing double quote')
      else if (this.text[this.at] === '\n') this.fail('a text runs over the end of its line; close its double quotes')
      else if (/\p{Cc}/u.test(this.text[this.at]!) && this.text[this.at]! >= '\u007f') result += this.text[this.at++]
      else this.fail(`a text holds the control character ${this.here()}; remove it`)
    }
    this.at++
    return result
  }

  private escape(): string {
    const letter = this.text[this.at + 1] ?? ''
    const plain = Object.hasOwn(ESCAPES, letter) ? ESCAPES[letter] : undefined
    if (plain !== undefined) {
      this.at += 2
      return plain
    }
    const hex = this.text.slice(this.at + 2, this.at + 6)
    if (letter !== 'u' || !/^[0-9a-fA-F]{4}$/.test(hex)) this.fail('a backslash in a text must be doubled: \\\\')
    this.at += 6
    return String.fromCharCode(Number.parseInt(hex, 16))
  }

  private numberOrWord(): number | boolean | null {
    const start = this.at
    const number = this.match(NUMBER)
    this.at = start
    const word = this.match(WORD) ?? ''
    if (word === 'true') return true
    if (word === 'false') return false
    if (word === 'null') return null
    if (number === null || number !== word) {
      this.at = start
      this.fail(word === '' ? `a value is expected, not ${this.here()}` : `${shown(word)} is no number; ${MEND_NUMBER}`)
    }
    const value = Number(number)
    if (!Number.isFinite(value)) this.fail(`${shown(word)} is too large a number; ${MEND_NUMBER}`)
    return value + 0
  }

  private match(pattern: RegExp): string | null {
    pattern.lastIndex = this.at
    const found = pattern.exec(this.text)
    if (found === null) return null
    this.at = pattern.lastIndex
    return found[0]
  }

  private take(character: string): boolean {
    this.space()
    if (this.text[this.at] !== character) return false
    this.at++
    return true
  }

  private space(): void {
    while (this.at < this.text.length && ' \t\r\n'.includes(this.text[this.at]!)) this.at++
  }

  private here(): string {
    return this.at >= this.text.length ? 'the end of the file' : shown(this.text[this.at])
  }

  private fail(mend: string): never {
    const line = this.text.slice(0, this.at).split('\n').length
    throw new FormatError(this.file, `line ${line}`, mend)
  }
}

const MEND_NUMBER = 'write one like 3.5, or null when it is not known'
