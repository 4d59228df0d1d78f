import { InputError } from '../../base/errors'
import { utf8Bytes } from '../../base/utf8Bytes'
import { crc32 } from '../../jobfile/crc32'
import { centralDirectory, localHeader, zipBytes } from '../../jobfile/zipWriting'
import type { LibraryClip } from '../library/libraryClip'
import { type PracticeSet, SET_LIMITS } from './practiceSet'

export const SET_FORMAT = 'yardhark-practice-set'
export const SET_VERSION = 1
export const MANIFEST_FILE = 'set.json'

export type Digest = (bytes: Uint8Array) => Promise<string>

/**
 * A set as the bytes of a zip: `set.json` with what is told of each clip and its digest, then the clips. The same set
 * makes the same bytes.
 *
 * @throws {InputError} no clip, or more than a set may have.
 */
export async function packSet(
  set: Omit<PracticeSet, 'id'>,
  digest: Digest,
): Promise<{ readonly id: string; readonly zip: Uint8Array }> {
  const { name, drill, clips } = set
  if (clips.length === 0 || clips.length > SET_LIMITS.clips) {
    throw new InputError(`a set has 1 to ${SET_LIMITS.clips} clips, not ${clips.length}`)
  }
  const files: { readonly path: string; readonly bytes: Uint8Array }[] = []
  const entries: unknown[] = []
  for (const [i, clip] of clips.entries()) {
    const number = String(i + 1).padStart(3, '0')
    const put = async (path: string, bytes: Uint8Array) => {
      files.push({ path, bytes })
      return { file: path, sha256: await digest(bytes) }
    }
    const sound = await put(`clips/${number}.wav`, clip.wav)
    const without = clip.without === null ? null : await put(`clips/${number}-without.wav`, clip.without)
    entries.push({ sound, without, ...toldOf(clip) })
  }
  const told = { format: SET_FORMAT, version: SET_VERSION, name, drill, clips: entries }
  const manifest = utf8Bytes(`${JSON.stringify(told, null, 2)}\n`)
  return { id: await digest(manifest), zip: zipped([{ path: MANIFEST_FILE, bytes: manifest }, ...files]) }
}

function toldOf(clip: LibraryClip) {
  const { file, label, source, consent, licence, invented, job, alongM, leakAtM, cover, device } = clip
  const told = { name: file, label, source, consent, licence, invented, job, cover, device }
  return { ...told, along_m: alongM, leak_at_m: leakAtM }
}

function zipped(files: readonly { readonly path: string; readonly bytes: Uint8Array }[]): Uint8Array {
  const listed = files.map(({ path, bytes }) => {
    const size = bytes.length
    return { path, crc: crc32(bytes), packedBytes: size, bytes: size, deflated: false }
  })
  const zip = new Uint8Array(zipBytes(listed))
  let at = 0
  const put = (bytes: Uint8Array) => {
    zip.set(bytes, at)
    at += bytes.length
  }
  for (const [i, file] of listed.entries()) {
    put(localHeader(file))
    put(files[i]!.bytes)
  }
  put(centralDirectory(listed))
  return zip
}
