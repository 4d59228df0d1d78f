import { FormatError } from '../base/errors'
import { utf8Bytes } from '../base/utf8Bytes'
import type { ByteSource } from './byteSource'
import { readZipListing } from './readZipListing'

/** Of a zip whose list cannot be read, so much of its beginning and end is looked at. Chosen: the list of a large job. */
const LOOKED_AT = 1e6

/**
 * Whether a zip holds a BagIt bag, at its top or in a folder of its own: a sweep folder in a zip does not.
 *
 * @param name For messages.
 * @returns False also for what is no zip and does not speak of a bag: whoever opens folders says what is wrong with it.
 * @throws {FormatError} a damaged zip that speaks of a bag.
 * @see RFC 8493, section 2: a bag has a bagit.txt in its base directory. [RFC8493]
 */
export async function holdsBag(source: ByteSource, name: string): Promise<boolean> {
  try {
    const { entries } = await readZipListing(source, name)
    return entries.some(({ path }) => /^(?:[^/]+\/)?bagit\.txt$/.test(path))
  } catch (error) {
    if (error instanceof FormatError && !(await speaksOfBag(source))) return false
    throw error
  }
}

async function speaksOfBag(source: ByteSource): Promise<boolean> {
  const { size } = source
  const head = await source.read(0, Math.min(LOOKED_AT, size))
  return holds(head, NAME) || holds(await source.read(Math.max(0, size - LOOKED_AT), size), NAME)
}

const NAME = utf8Bytes('bagit.txt')

function holds(bytes: Uint8Array, wanted: Uint8Array): boolean {
  for (let at = bytes.indexOf(wanted[0]!); at >= 0; at = bytes.indexOf(wanted[0]!, at + 1)) {
    if (wanted.every((byte, i) => bytes[at + i] === byte)) return true
  }
  return false
}
