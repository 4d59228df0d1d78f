import { writeSync } from 'node:fs'
import { printable } from '../../shared/base/shown'

/**
 * The two streams of the command line. Text goes out as it comes in: whoever hands it over has made names and notes
 * out of files printable first.
 */

/** Writes an answer to standard output; quiet when the reader has gone. */
export async function print(text: string): Promise<void> {
  await new Promise<void>((resolve) => {
    process.stdout.write(text, () => resolve())
  })
}

/**
 * A value as one line of JSON. Characters that would steer a terminal are written as escapes, which read back as they were;
 * JSON by itself would let DEL and what lies behind it through.
 */
export function jsonLine(value: unknown): string {
  return `${printable(JSON.stringify(value), Number.POSITIVE_INFINITY)}\n`
}

/** A cell of data: as it is in a file or a pipe; on a terminal with what would steer it made visible. */
export function forTerminal(cell: string): string {
  return process.stdout.isTTY ? printable(cell) : cell
}

/** One line on standard error. */
export function complain(message: string): void {
  clearProgress()
  writeSync(2, `yardhark: ${message.replace(/\s*[\r\n]+\s*/g, ' ')}\n`)
}

/** How far a long step is; on a terminal only, and gone before anything else is written. */
export function showProgress(text: string): void {
  if (!process.stderr.isTTY) return
  process.stderr.write(`\r\u001b[K${text}`)
  progressShown = true
}

export function clearProgress(): void {
  if (progressShown) process.stderr.write('\r\u001b[K')
  progressShown = false
}

let progressShown = false

/** Columns to fill: the terminal's, or those of a plain page. */
export function pageWidth(): number {
  return Math.max(40, Math.min(process.stdout.columns ?? PLAIN_WIDTH, MOST_WIDTH))
}

const PLAIN_WIDTH = 100
const MOST_WIDTH = 160

/** True where shades and box corners can be shown: a terminal that says it speaks UTF-8. */
export function hasShades(): boolean {
  const { LC_ALL, LC_CTYPE, LANG } = process.env
  return process.stdout.isTTY === true && /utf-?8/i.test(LC_ALL || LC_CTYPE || LANG || '')
}

/**
 * Text in lines of at most `width` columns, broken between words; longer words stand over.
 *
 * @param indent Columns before every line, two more before the second and all after it.
 */
export function wrapped(text: string, width: number, indent: number): string {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    const room = width - indent - (lines.length === 0 ? 0 : 2)
    if (line !== '' && [...line].length + 1 + [...word].length > room) {
      lines.push(line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  return [...lines, line].map((each, i) => `${' '.repeat(indent + (i === 0 ? 0 : 2))}${each}\n`).join('')
}

/**
 * Rows in columns under a heading, two spaces between; text to the left, numbers to the right.
 *
 * @param alignLeft Which columns are text.
 */
export function table(rows: readonly (readonly string[])[], alignLeft: readonly boolean[]): string {
  const widths = alignLeft.map((_, i) => rows.reduce((width, row) => Math.max(width, [...row[i]!].length), 0))
  const cell = (text: string, i: number) => {
    const space = ' '.repeat(widths[i]! - [...text].length)
    return alignLeft[i] ? text + space : space + text
  }
  return rows.map((row) => `${row.map(cell).join('  ').trimEnd()}\n`).join('')
}
