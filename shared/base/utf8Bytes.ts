/**
 * Text as UTF-8; `TextEncoder` belongs to browsers and Node and not to the language. A lone surrogate becomes U+FFFD.
 *
 * @see IETF RFC 3629, section 3. [RFC3629]
 */
export function utf8Bytes(text: string): Uint8Array {
  const bytes = new Uint8Array(3 * text.length)
  let at = 0
  for (const character of text) {
    const told = character.codePointAt(0)!
    const code = told >= 0xd800 && told <= 0xdfff ? 0xfffd : told
    if (code < 0x80) bytes[at++] = code
    else {
      const tails = code < 0x800 ? 1 : code < 0x10000 ? 2 : 3
      bytes[at++] = [0, 0xc0, 0xe0, 0xf0][tails]! | (code >> (6 * tails))
      for (let tail = tails - 1; tail >= 0; tail--) bytes[at++] = 0x80 | ((code >> (6 * tail)) & 0x3f)
    }
  }
  return bytes.slice(0, at)
}
