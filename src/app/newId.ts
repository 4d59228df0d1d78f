/** An id that nobody has: 16 letters and digits, 80 bits of chance. Works where the page is not served securely, too. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => LETTERS[byte % 32]).join('')
}

const LETTERS = '0123456789abcdefghjkmnpqrstvwxyz'
