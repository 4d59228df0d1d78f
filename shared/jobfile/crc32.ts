const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1
  return value
})

/**
 * CRC-32 as zip, gzip and PNG have it.
 *
 * @returns 0 to 2³² − 1.
 * @see ISO/IEC 13239 as zip's APPNOTE 4.4.7 names it; check value 0xCBF43926 for "123456789". [APPNOTE636]
 * @example crc32(new TextEncoder().encode('123456789')) // 0xcbf43926
 */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff
  const count = bytes.length
  for (let i = 0; i < count; i++) crc = TABLE[(crc ^ bytes[i]!) & 0xff]! ^ (crc >>> 8)
  return (crc ^ 0xffffffff) >>> 0
}
