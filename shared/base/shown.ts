/**
 * A value out of a file as it may stand in a message: text in quotes, cut to 60 characters, with control characters,
 * line breaks and marks that turn the direction of text made visible, so that no file can write over a terminal or
 * make one line into two.
 *
 * @param value Anything a JSON or CSV file can hold.
 * @returns One line. Text in double quotes, numbers and words as they are, lists and objects only named.
 * @example shown('3,5\n') // '"3,5\\n"'
 */
export function shown(value: unknown): string {
  if (typeof value === 'string') return `"${printable(value, 60)}"`
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return 'an object'
  return printable(String(value), 60)
}

/**
 * The same without quotes, for names that stand in a sentence.
 *
 * @param limit Longest result in UTF-16 code units before the mark that says it was cut.
 */
export function printable(text: string, limit = 200): string {
  const cut = text.length > limit ? `${text.slice(0, limit)}...` : text
  return cut.replace(HIDDEN, escaped)
}

// Controls (C0, DEL, C1), lone surrogates, soft hyphen, zero-width and direction marks, line and paragraph separators.
const HIDDEN = /[\p{Cc}\p{Cs}\u00ad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/gu

function escaped(character: string): string {
  const short = { '\n': '\\n', '\r': '\\r', '\t': '\\t' }[character]
  return short ?? `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`
}
