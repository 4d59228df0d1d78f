/** Bits into bytes, the highest first. */
export class BitWriter {
  private bytes: Uint8Array
  private at = 0
  private pending = 0
  private pendingBits = 0

  constructor(expectedBytes: number) {
    this.bytes = new Uint8Array(Math.max(64, expectedBytes))
  }

  /** Whole bytes written so far. */
  get length(): number {
    return this.at
  }

  /** @param value 0 to 2^bits - 1, or negative as two's complement. @param bits 0 to 32. */
  write(value: number, bits: number): void {
    if (bits > 16) {
      this.write(Math.floor(value / 65536) & (2 ** (bits - 16) - 1), bits - 16)
      this.write(value & 0xffff, 16)
      return
    }
    // At most 7 + 16 bits wait, which an integer of 32 bits holds.
    this.pending = (this.pending << bits) | (value & (2 ** bits - 1))
    this.pendingBits += bits
    while (this.pendingBits >= 8) {
      this.pendingBits -= 8
      this.put((this.pending >> this.pendingBits) & 0xff)
    }
    this.pending &= 2 ** this.pendingBits - 1
  }

  /** So many zeros and a one. */
  writeUnary(zeros: number): void {
    let left = zeros
    for (; left >= 16; left -= 16) this.write(0, 16)
    this.write(1, left + 1)
  }

  writeBytes(bytes: Uint8Array): void {
    for (const byte of bytes) this.write(byte, 8)
  }

  /** Zeros up to the next whole byte. */
  align(): void {
    if (this.pendingBits > 0) this.write(0, 8 - this.pendingBits)
  }

  /** What was written from a byte on; shares memory with what comes. */
  from(start: number): Uint8Array {
    return this.bytes.subarray(start, this.at)
  }

  private put(byte: number): void {
    if (this.at === this.bytes.length) {
      const larger = new Uint8Array(2 * this.bytes.length)
      larger.set(this.bytes)
      this.bytes = larger
    }
    this.bytes[this.at++] = byte
  }
}
