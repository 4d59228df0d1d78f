import type { Line } from './line'
import { lineJson } from './lineJson'

/**
 * A line as the text of a `line.json`; `readLineJson` gives the same line again.
 *
 * @returns JSON in full precision, what was not told left out, unknown keys and words as they were read, a newline at
 *   the end.
 */
export function writeLineJson(line: Line): string {
  return `${JSON.stringify(lineJson(line), null, 2)}\n`
}
