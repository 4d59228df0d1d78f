import { decodeText } from '../../base/decodeText'
import { FormatError } from '../../base/errors'
import { field, type JsonObject, jsonObject, optionalList, optionalNumber, requiredText } from '../../base/jsonFields'
import { parseJson } from '../../base/parseJson'
import { printable, shown } from '../../base/shown'
import type { ByteSource } from '../../jobfile/byteSource'
import { readZipFile } from '../../jobfile/readZipFile'
import { readZipListing } from '../../jobfile/readZipListing'
import { SOUND_KINDS } from '../drills/question'
import { type ClipLabel, CONSENTS, type LibraryClip } from '../library/libraryClip'
import { type Digest, MANIFEST_FILE, SET_FORMAT, SET_VERSION } from './packSet'
import { type PracticeSet, SET_DRILLS, SET_LIMITS, type SetClip, type SetDrill } from './practiceSet'

const LABELS: Readonly<Record<SetDrill, readonly ClipLabel[]>> = { leak: ['leak', 'no leak'], what: SOUND_KINDS }
const MOST_ALONG_M = 1e5
const MOST_TEXT = 1000

/**
 * Opens a set that nobody vouches for: every clip is checked against its digest before anything is taken.
 *
 * @param name Of the file, for messages.
 * @throws {FormatError} no set, of a newer version, or damaged; one line with the mend.
 */
export async function openSet(source: ByteSource, name: string, digest: Digest): Promise<PracticeSet> {
  const file = printable(name)
  const { entries } = await readZipListing(source, file)
  const manifest = entries.find(({ path }) => path === MANIFEST_FILE)
  if (manifest === undefined) throw new FormatError(file, '', `holds no ${MANIFEST_FILE}, so it is no set of clips`)
  const bytes = await readZipFile(source, manifest, file)
  const told = jsonObject(parseJson(decodeText(bytes, MANIFEST_FILE), MANIFEST_FILE), MANIFEST_FILE, '')
  checkFormat(told, SET_FORMAT, SET_VERSION)
  const drill = oneOf(told, 'drill', SET_DRILLS)
  const read = async (value: unknown, place: string): Promise<Uint8Array> => {
    const sound = jsonObject(value, MANIFEST_FILE, place)
    const path = text(sound, 'file')
    const entry = entries.find((each) => each.path === path)
    if (entry === undefined) throw new FormatError(file, printable(path), 'is missing; ask for the set again')
    if (entry.bytes > SET_LIMITS.clipBytes) throw new FormatError(file, printable(path), 'is too large for a clip')
    const clip = await readZipFile(source, entry, file)
    if ((await digest(clip)) === text(sound, 'sha256')) return clip
    throw new FormatError(
      file,
      printable(path),
      'is not what the set says; it was damaged or changed, ask for it again',
    )
  }
  const clips: SetClip[] = []
  for (const [i, value] of optionalList(told, 'clips', SET_LIMITS.clips).entries()) {
    const place = `clips[${i}]`
    const entry = jsonObject(value, MANIFEST_FILE, place)
    const wav = await read(field(entry, 'sound'), `${place}.sound`)
    const other = field(entry, 'without')
    const without = other === undefined ? null : await read(other, `${place}.without`)
    clips.push({ ...readTold(entry, LABELS[drill]), wav, without })
  }
  if (clips.length === 0) throw new FormatError(MANIFEST_FILE, 'clips', 'is empty; a set needs at least one clip')
  return { id: await digest(bytes), name: text(told, 'name').slice(0, SET_LIMITS.name), drill, clips }
}

/** Refuses another kind of file, and one from a newer version. @throws {FormatError} */
export function checkFormat(told: JsonObject, format: string, version: number): void {
  const found = field(told, 'format')
  if (found !== format) throw new FormatError(told.file, 'format', `is ${shown(found)}; ${shown(format)} is expected`)
  const at = optionalNumber(told, 'version', { low: 1, high: 1e6 })
  if (at === version) return
  throw new FormatError(told.file, 'version', `is ${shown(at)}; this program reads ${version}: update it`)
}

function readTold(entry: JsonObject, labels: readonly ClipLabel[]): LibraryClip {
  const along = { low: -MOST_ALONG_M, high: MOST_ALONG_M }
  return {
    file: text(entry, 'name'),
    label: oneOf(entry, 'label', labels),
    source: text(entry, 'source'),
    consent: oneOf(entry, 'consent', CONSENTS),
    licence: text(entry, 'licence'),
    invented: field(entry, 'invented') === true,
    job: text(entry, 'job'),
    alongM: optionalNumber(entry, 'along_m', along),
    leakAtM: optionalNumber(entry, 'leak_at_m', along),
    cover: text(entry, 'cover'),
    device: text(entry, 'device'),
  }
}

function text(object: JsonObject, key: string): string {
  return requiredText(object, key, ['a text']).slice(0, MOST_TEXT)
}

function oneOf<Word extends string>(object: JsonObject, key: string, known: readonly Word[]): Word {
  const told = requiredText(object, key, known)
  const word = known.find((each) => each === told)
  if (word !== undefined) return word
  const place = object.place === '' ? key : `${object.place}.${key}`
  throw new FormatError(object.file, place, `is ${shown(told)}; write one of ${known.join(', ')}`)
}
