/**
 * SHA-256 of bytes.
 *
 * For pages that were not opened securely, which browsers give no digests; elsewhere the browser's own is faster.
 *
 * @returns 64 small hexadecimal digits.
 * @see NIST FIPS 180-4, 2015, sections 4.1.2, 4.2.2, 5.1.1, 5.3.3 and 6.2. [FIPS180] in sources.ts
 * @example sha256(new Uint8Array()) // 'e3b0c442...'
 */
export function sha256(bytes: Uint8Array): string {
  const state = INITIAL.slice()
  const words = new Int32Array(64)
  const wholeBlocks = bytes.length >> 6
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  for (let block = 0; block < wholeBlocks; block++) takeBlock(state, words, view, block << 6)
  const rest = padded(bytes, wholeBlocks << 6)
  for (let at = 0; at < rest.byteLength; at += 64) takeBlock(state, words, rest, at)
  return [...state].map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('')
}

/** What is left after the whole blocks, a one bit, zeros, and the length in bits. */
function padded(bytes: Uint8Array, from: number): DataView {
  const left = bytes.length - from
  const end = new Uint8Array(left < 56 ? 64 : 128)
  end.set(bytes.subarray(from))
  end[left] = 0x80
  const view = new DataView(end.buffer)
  view.setUint32(end.length - 8, Math.floor(bytes.length / 0x2000_0000))
  view.setUint32(end.length - 4, (bytes.length << 3) >>> 0)
  return view
}

function takeBlock(state: Int32Array, w: Int32Array, view: DataView, at: number): void {
  for (let t = 0; t < 16; t++) w[t] = view.getInt32(at + 4 * t)
  for (let t = 16; t < 64; t++) {
    const x = w[t - 15]!
    const y = w[t - 2]!
    const s0 = turned(x, 7) ^ turned(x, 18) ^ (x >>> 3)
    const s1 = turned(y, 17) ^ turned(y, 19) ^ (y >>> 10)
    w[t] = w[t - 16]! + s0 + w[t - 7]! + s1
  }
  let a = state[0]!
  let b = state[1]!
  let c = state[2]!
  let d = state[3]!
  let e = state[4]!
  let f = state[5]!
  let g = state[6]!
  let h = state[7]!
  for (let t = 0; t < 64; t++) {
    const s1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + ROUND[t]! + w[t]!) | 0
    const s0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0
    h = g
    g = f
    f = e
    e = (d + t1) | 0
    d = c
    c = b
    b = a
    a = (t1 + t2) | 0
  }
  const after = [a, b, c, d, e, f, g, h]
  for (let i = 0; i < 8; i++) state[i] = state[i]! + after[i]!
}

function turned(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by))
}

const PRIMES = firstPrimes(64)
/** First 32 bits of the fractional parts of the cube roots of the first 64 primes. */
const ROUND = Int32Array.from(PRIMES, (prime) => fractionBits(Math.cbrt(prime)))
/** The same of the square roots of the first eight. */
const INITIAL = Int32Array.from(PRIMES.slice(0, 8), (prime) => fractionBits(Math.sqrt(prime)))

function fractionBits(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32) | 0
}

function firstPrimes(count: number): number[] {
  const primes: number[] = []
  for (let n = 2; primes.length < count; n++) if (primes.every((prime) => n % prime !== 0)) primes.push(n)
  return primes
}
