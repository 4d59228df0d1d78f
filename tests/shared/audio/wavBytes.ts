/** A chunk as its bytes; `size` and `pad` only when the chunk is to lie or to break the rules. */
export function chunk(
  id: string,
  body: Uint8Array | readonly number[],
  { size = body.length, pad = true, big = false }: { size?: number; pad?: boolean; big?: boolean } = {},
): Uint8Array {
  const bytes = new Uint8Array(8 + body.length + (pad ? body.length % 2 : 0))
  bytes.set(Uint8Array.from(id, (character) => character.charCodeAt(0)))
  new DataView(bytes.buffer).setUint32(4, size, !big)
  bytes.set(body, 8)
  return bytes
}

export interface FormatFields {
  tag?: number
  channels?: number
  rateHz?: number
  bits?: number
  blockBytes?: number
  byteRate?: number
  /** Makes it extensible: valid bits and the tag of the subformat. */
  extensible?: { validBits: number; tag: number }
  big?: boolean
}

/** A `fmt ` chunk; mono 16-bit PCM at 48 kHz unless said. */
export function format(fields: FormatFields = {}): Uint8Array {
  const { tag = 1, channels = 1, rateHz = 48_000, bits = 16, extensible, big = false } = fields
  const blockBytes = fields.blockBytes ?? channels * Math.ceil(bits / 8)
  const body = new Uint8Array(extensible ? 40 : 16)
  const view = new DataView(body.buffer)
  view.setUint16(0, extensible ? 0xfffe : tag, !big)
  view.setUint16(2, channels, !big)
  view.setUint32(4, rateHz, !big)
  view.setUint32(8, fields.byteRate ?? (rateHz * blockBytes) % 2 ** 32, !big)
  view.setUint16(12, blockBytes, !big)
  view.setUint16(14, bits, !big)
  if (extensible) {
    view.setUint16(16, 22, !big)
    view.setUint16(18, extensible.validBits, !big)
    view.setUint32(24, extensible.tag, !big)
    body.set([0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71], 28)
  }
  return chunk('fmt ', body, { big })
}

/** A whole file of these chunks. */
export function wav(
  chunks: readonly Uint8Array[],
  { id = 'RIFF', size, big = false }: { id?: string; size?: number; big?: boolean } = {},
): Uint8Array {
  const length = chunks.reduce((sum, one) => sum + one.length, 0)
  const head = chunk(
    id,
    Uint8Array.from('WAVE', (character) => character.charCodeAt(0)),
    { size: size ?? length + 4, big },
  )
  return joined([head, ...chunks])
}

export function joined(parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    bytes.set(part, at)
    at += part.length
  }
  return bytes
}

/** 16-bit little-endian (or big-endian) samples. */
export function int16(values: readonly number[], big = false): Uint8Array {
  const bytes = new Uint8Array(2 * values.length)
  const view = new DataView(bytes.buffer)
  for (const [i, value] of values.entries()) view.setInt16(2 * i, value, !big)
  return bytes
}
