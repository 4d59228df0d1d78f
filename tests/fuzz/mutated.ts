import type { Random } from '../../shared/base/random'

/** Texts that readers trip over: numbers out of range, markup, marks that turn the writing, ends of lines. */
const ODD_TEXTS = [
  '-1',
  '1e999',
  'NaN',
  '0',
  '99999999999',
  '<b>',
  '\u202e',
  '"',
  '\r',
  '\n',
  ',',
  '../',
  '\0',
  '\ufeff',
]

/** The bytes with one to eight things done to them: bits turned, pieces cut, copied, lengths changed, odd texts put in. */
export function mutated(bytes: Uint8Array, random: Random): Uint8Array {
  const changes = random.integer(1, 8)
  let result = bytes
  for (let i = 0; i < changes; i++) result = once(result, random)
  return result
}

function once(bytes: Uint8Array, random: Random): Uint8Array {
  const at = placeIn(bytes, random)
  const to = Math.min(bytes.length, at + random.integer(1, 64))
  const changed = bytes.slice()
  switch (random.integer(0, 6)) {
    case 0:
      if (changed.length > 0) changed[at]! ^= 1 << random.integer(0, 7)
      return changed
    case 1:
      return bytes.slice(0, at)
    case 2:
      return joined(bytes.subarray(0, at), bytes.subarray(to))
    case 3:
      return joined(bytes.subarray(0, to), bytes.subarray(at))
    case 4:
      return joined(bytes.subarray(0, at), new TextEncoder().encode(random.pick(ODD_TEXTS)), bytes.subarray(at))
    case 5:
      for (let i = at; i < to; i++) changed[i] = random.pick([0, 0xff, 0x7f, 0x80])
      return changed
    default: {
      // A length or an offset, as headers hold them.
      const view = new DataView(changed.buffer)
      if (at + 4 <= changed.length) view.setUint32(at, random.pick([0, 1, 0x7fffffff, 0xffffffff, 0xfffffff8]), true)
      return changed
    }
  }
}

/** Headers and lists lie at both ends: half of the changes do as well. */
function placeIn(bytes: Uint8Array, random: Random): number {
  const ends = Math.min(bytes.length, 512)
  const which = random.integer(0, 3)
  if (which === 0) return random.integer(0, Math.max(0, ends - 1))
  if (which === 1) return Math.max(0, bytes.length - 1 - random.integer(0, Math.max(0, ends - 1)))
  return random.integer(0, Math.max(0, bytes.length - 1))
}

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  return Uint8Array.from(Buffer.concat(parts))
}
