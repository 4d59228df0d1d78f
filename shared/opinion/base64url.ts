const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'

/** Bytes as base64url without padding. @see IETF RFC 4648, section 5. [RFC4648] @example base64url(Uint8Array.of(20, 251, 156, 3, 217, 126)) // 'FPucA9l-' */
export function base64url(bytes: Uint8Array): string {
  let text = ''
  for (let at = 0; at < bytes.length; at += 3) {
    const word = (bytes[at]! << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0)
    const count = Math.min(4, bytes.length - at + 1)
    for (let i = 0; i < count; i++) text += LETTERS[(word >> (18 - 6 * i)) & 63]
  }
  return text
}

/** The bytes of base64url without padding; `null` for anything else. */
export function fromBase64url(text: string): Uint8Array | null {
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4))
  let word = 0
  let bits = 0
  let at = 0
  for (const letter of text) {
    const value = LETTERS.indexOf(letter)
    if (value < 0) return null
    word = ((word << 6) | value) & 0xffffff
    bits += 6
    if (bits >= 8) {
      bits -= 8
      bytes[at++] = (word >> bits) & 0xff
    }
  }
  return at === bytes.length ? bytes : null
}
