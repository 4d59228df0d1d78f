/** Thrown inside the reader of FLAC: the stream is no such stream, or breaks off. */
export class BrokenStream extends Error {}

/** Bits out of bytes, the highest first. */
export class BitReader {
  private bit = 0

  /** @param at Byte to begin with. */
  constructor(
    private readonly bytes: Uint8Array,
    private at: number,
  ) {}

  /** Byte that is read next; for whole bytes only. */
  get place(): number {
    return this.at
  }

  /** @param bits 0 to 32. @returns 0 to 2^bits - 1. @throws {BrokenStream} behind the end. */
  read(bits: number): number {
    let value = 0
    let left = bits
    while (left > 0) {
      if (this.at >= this.bytes.length) throw new BrokenStream('it breaks off')
      const take = Math.min(left, 8 - this.bit)
      const piece = (this.bytes[this.at]! >> (8 - this.bit - take)) & (2 ** take - 1)
      value = value * 2 ** take + piece
      left -= take
      this.bit += take
      if (this.bit === 8) {
        this.bit = 0
        this.at++
      }
    }
    return value
  }

  /** The same as a number with a sign, two's complement. */
  readSigned(bits: number): number {
    const value = this.read(bits)
    return bits > 0 && value >= 2 ** (bits - 1) ? value - 2 ** bits : value
  }

  /** How many zeros stand before the next one. @throws {BrokenStream} more than so many. */
  readUnary(most: number): number {
    for (let zeros = 0; zeros <= most; zeros++) {
      if (this.bit === 0 && this.bytes[this.at] === 0) {
        this.at++
        zeros += 7
      } else if (this.read(1) === 1) {
        return zeros
      }
    }
    throw new BrokenStream('a number in it is far too large')
  }

  /** On to the next whole byte. */
  align(): void {
    if (this.bit === 0) return
    this.bit = 0
    this.at++
  }
}
