import { decodeText } from '../base/decodeText'
import { FormatError } from '../base/errors'
import type { Problem } from '../base/problem'
import { printable } from '../base/shown'
import { MANIFEST, TAG_MANIFEST } from './bagTexts'
import type { ByteSource } from './byteSource'
import { checkDeclaration, readBagInfo, readManifest } from './readBagTexts'
import { readZipFile } from './readZipFile'
import { readZipListing } from './readZipListing'
import type { ZipEntry } from './zipListing'

/** SHA-256 of bytes as 64 small hexadecimal digits: the shells bring the platform's own. */
export type Digest = (bytes: Uint8Array) => Promise<string>

/** A bag whose list and texts were read; its payload is unpacked and checked file by file. */
export interface Bag {
  /** The one folder it lies in. */
  readonly base: string
  readonly info: ReadonlyMap<string, string>
  /** Payload that the manifest names and the zip holds, in the order of the zip. */
  readonly payload: readonly string[]
  /** What is wrong so far: missing, extra, refused. */
  readonly problems: readonly Problem[]
  /** Bytes of a file of the payload, unpacked and checked against its digest. @throws {FormatError} damaged. */
  read(path: string): Promise<Uint8Array>
}

/** Texts of a bag are short. Chosen: a manifest of 20 000 files. */
const MOST_TEXT_BYTES = 8e6

/** Troubles that are told one by one; of more, only the count. */
const MOST_TOLD = 20

/**
 * Opens a bag in a zip that nobody vouches for.
 *
 * @param name For messages.
 * @throws {FormatError} no zip, no bag, several bags; a declaration or a manifest that is missing.
 * @see RFC 8493, sections 2 and 3: complete and valid bags. [RFC8493]
 */
export async function readBag(source: ByteSource, name: string, digest: Digest): Promise<Bag> {
  const { entries, brokenOff } = await readZipListing(source, name)
  const base = baseFolder(entries, name)
  const files = new Map(
    entries.filter(({ path }) => path.startsWith(base)).map((entry) => [entry.path.slice(base.length), entry]),
  )
  const problems: Problem[] = brokenOff ? [{ key: 'bag_broken_off', severity: 'weak', values: {} }] : []
  const tags = new TagFiles(source, files, name, digest)
  checkDeclaration((await tags.text('bagit.txt', true)) ?? missingTag(name, 'bagit.txt'), name)
  const tagManifest = await tags.readTagManifest()
  const manifest = readManifest((await tags.text(MANIFEST)) ?? missingTag(name, MANIFEST), isPayload)
  const info = readBagInfo((await tags.text('bag-info.txt')) ?? '')
  const digests = new Map(manifest.files.map(({ path, sha256 }) => [path, sha256]))
  const payload = [...files.keys()].filter((path) => digests.has(path) && files.get(path)!.trouble === null)
  problems.push(
    ...tags.problems,
    ...oddRowProblems(MANIFEST, manifest.oddRows),
    ...(files.has('fetch.txt') ? [{ key: 'bag_fetch', severity: 'weak', values: {} } as const] : []),
    ...told([
      ...missingProblems([...digests.keys()], files),
      ...refusedProblems(entries, base),
      ...extraProblems(files, digests, tagManifest),
    ]),
    ...oxumProblems(info, payload, files),
  )
  return {
    base: base.slice(0, -1),
    info,
    payload,
    problems,
    read: async (path) => {
      const bytes = await readZipFile(source, files.get(path)!, name)
      if ((await digest(bytes)) === digests.get(path)) return bytes
      throw new FormatError(name, printable(path), 'is not what the manifest says; it was damaged or changed')
    },
  }
}

function missingTag(name: string, path: string): never {
  throw new FormatError(name, '', `holds no ${path}, so it is no job file; a folder of clips is opened as such`)
}

/** The one folder at the top, with its slash. What packing programs add for themselves does not count. */
function baseFolder(entries: readonly ZipEntry[], name: string): string {
  const tops = new Set(entries.map(({ path }) => path.slice(0, path.indexOf('/') + 1)))
  const bags = [...tops].filter((top) => entries.some(({ path }) => path === `${top}bagit.txt`))
  if (bags.length === 1) return bags[0]!
  if (bags.length > 1) throw new FormatError(name, '', `holds ${bags.length} jobs; pack each by itself`)
  return missingTag(name, 'bagit.txt')
}

function isPayload(path: string): boolean {
  return path.startsWith('data/')
}

/** The texts about the payload, checked by their own manifest where there is one. */
class TagFiles {
  readonly problems: Problem[] = []
  private digests: ReadonlyMap<string, string> = new Map()

  constructor(
    private readonly source: ByteSource,
    private readonly files: ReadonlyMap<string, ZipEntry>,
    private readonly name: string,
    private readonly digest: Digest,
  ) {}

  /** @returns Paths that the manifest of the texts names. */
  async readTagManifest(): Promise<ReadonlySet<string>> {
    const text = await this.text(TAG_MANIFEST)
    if (text === null) return new Set()
    const { files, oddRows } = readManifest(text, (path) => !isPayload(path) && !path.startsWith('tagmanifest-'))
    this.problems.push(...oddRowProblems(TAG_MANIFEST, oddRows))
    this.digests = new Map(files.map(({ path, sha256 }) => [path, sha256]))
    for (const path of this.digests.keys()) {
      if (!this.files.has(path)) this.problems.push(fileProblem('bag_file_missing', path))
    }
    await this.check('bagit.txt')
    return new Set(this.digests.keys())
  }

  /** @returns `null` when there is none. @throws {FormatError} damaged in the zip; no UTF-8. */
  async text(path: string, refuseMark = false): Promise<string | null> {
    const bytes = await this.bytes(path)
    if (bytes === null) return null
    if (refuseMark && bytes[0] === 0xef) {
      throw new FormatError(this.name, path, 'begins with a byte order mark, which no bag may have; pack it again')
    }
    const expected = this.digests.get(path)
    if (expected !== undefined && (await this.digest(bytes)) !== expected) this.problems.push(changed(path))
    return decodeText(bytes, `${this.name}, ${path}`)
  }

  private async check(path: string): Promise<void> {
    const expected = this.digests.get(path)
    const bytes = await this.bytes(path)
    if (expected !== undefined && bytes !== null && (await this.digest(bytes)) !== expected) {
      this.problems.push(changed(path))
    }
  }

  private async bytes(path: string): Promise<Uint8Array | null> {
    const entry = this.files.get(path)
    if (entry === undefined) return null
    if (entry.bytes > MOST_TEXT_BYTES)
      throw new FormatError(this.name, path, 'is far too large; ask for the file again')
    return readZipFile(this.source, entry, this.name)
  }
}

function missingProblems(paths: readonly string[], files: ReadonlyMap<string, ZipEntry>): Problem[] {
  return paths.filter((path) => !files.has(path)).map((path) => fileProblem('bag_file_missing', path))
}

/** Files the zip should not have, or not so: paths that leave it, names that stand twice, bombs. */
function refusedProblems(entries: readonly ZipEntry[], base: string): Problem[] {
  const seen = new Set<string>()
  return entries.flatMap(({ path, trouble }) => {
    if (seen.has(path) || isPackersOwn(path)) return []
    seen.add(path)
    const why = trouble ?? (path.startsWith(base) ? null : 'lies outside the job')
    const shownPath = path.startsWith(base) ? path.slice(base.length) : path
    return why === null ? [] : [fileProblem('bag_file_refused', shownPath, { why })]
  })
}

function extraProblems(
  files: ReadonlyMap<string, ZipEntry>,
  digests: ReadonlyMap<string, string>,
  tagManifest: ReadonlySet<string>,
): Problem[] {
  const known = (path: string) =>
    digests.has(path) || tagManifest.has(path) || /^(?:bagit|bag-info|fetch|(?:tag)?manifest-\w+)\.txt$/.test(path)
  return [...files]
    .filter(([path, { trouble }]) => trouble === null && !known(path) && !isPackersOwn(path))
    .map(([path]) => fileProblem('bag_file_extra', path))
}

function isPackersOwn(path: string): boolean {
  return /(?:^|\/)(?:__MACOSX|\.DS_Store|Thumbs\.db)(?:\/|$)/.test(path)
}

/** `Payload-Oxum: bytes.files` lets a reader see early that something is missing. */
function oxumProblems(
  info: ReadonlyMap<string, string>,
  payload: readonly string[],
  files: ReadonlyMap<string, ZipEntry>,
): Problem[] {
  const toldOxum = info.get('payload-oxum')
  const bytes = payload.reduce((sum, path) => sum + files.get(path)!.bytes, 0)
  if (toldOxum === undefined || toldOxum === `${bytes}.${payload.length}`) return []
  return [{ key: 'bag_oxum', severity: 'note', values: {} }]
}

function oddRowProblems(file: string, rows: readonly number[]): Problem[] {
  if (rows.length === 0) return []
  return [{ key: 'bag_odd_row', severity: 'weak', values: { file, row: rows[0]!, count: rows.length } }]
}

function changed(path: string): Problem {
  return fileProblem('bag_file_damaged', path, { why: 'it is not what its manifest says' })
}

function fileProblem(key: string, path: string, values: Problem['values'] = {}): Problem {
  return { key, severity: 'weak', values: { file: printable(path), ...values } }
}

function told(problems: readonly Problem[]): Problem[] {
  if (problems.length <= MOST_TOLD) return [...problems]
  const count = problems.length - MOST_TOLD
  return [...problems.slice(0, MOST_TOLD), { key: 'bag_more', severity: 'weak', values: { count } }]
}
