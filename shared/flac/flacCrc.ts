/** CRC-8 of a frame's header: x^8 + x^2 + x + 1. @see IETF RFC 9639, section 9.1.8. [RFC9639] */
export function crc8(bytes: Uint8Array): number {
  return bytes.reduce((crc, byte) => CRC8[crc ^ byte]!, 0)
}

/** CRC-16 of a whole frame: x^16 + x^15 + x^2 + 1. @see IETF RFC 9639, section 9.3. [RFC9639] */
export function crc16(bytes: Uint8Array): number {
  return bytes.reduce((crc, byte) => ((crc << 8) & 0xffff) ^ CRC16[(crc >> 8) ^ byte]!, 0)
}

const CRC8 = table(8, 0x07)
const CRC16 = table(16, 0x8005)

function table(bits: number, polynomial: number): Uint16Array {
  const top = 1 << (bits - 1)
  const all = 2 ** bits - 1
  return Uint16Array.from({ length: 256 }, (_, byte) => {
    let crc = byte << (bits - 8)
    for (let i = 0; i < 8; i++) crc = (crc & top ? (crc << 1) ^ polynomial : crc << 1) & all
    return crc
  })
}
