import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { sha256 } from '../../../shared/base/sha256'

const ascii = (text: string) => new TextEncoder().encode(text)

describe('SHA-256', () => {
  // NIST, Examples with Intermediate Values, SHA256.pdf (csrc.nist.gov, cryptographic standards and guidelines).
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('of %s is what NIST says', (text, digest) => {
    expect(sha256(ascii(text))).toBe(digest)
  })

  it("is that of Node's OpenSSL for every length round two blocks", () => {
    const random = new Random('sha256')
    for (let length = 0; length <= 130; length++) {
      const bytes = Uint8Array.from({ length: length + 3 }, () => Math.floor(256 * random.uniform())).subarray(3)
      expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'))
    }
  })

  it('is that of OpenSSL for a megabyte', () => {
    const bytes = Uint8Array.from({ length: 1_000_003 }, (_, i) => (i * 31) & 255)
    expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'))
  })
})
