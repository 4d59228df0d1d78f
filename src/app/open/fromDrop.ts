import type { SourceFile } from './source'

/** Chosen: as in a zip. */
const MOST_FILES = 5000

/** What was dropped, folders walked. Entries must be taken from the event at once, before anything is awaited. */
export function droppedEntries(transfer: DataTransfer): FileSystemEntry[] {
  return [...transfer.items].flatMap((item) => {
    const entry = item.kind === 'file' ? item.webkitGetAsEntry() : null
    return entry === null ? [] : [entry]
  })
}

/**
 * All files under the dropped entries.
 *
 * @returns `folder` is the name of the one dropped folder, `null` for loose files or several folders.
 */
export async function fromDrop(
  entries: readonly FileSystemEntry[],
): Promise<{ readonly folder: string | null; readonly files: readonly SourceFile[] }> {
  const files: SourceFile[] = []
  for (const entry of entries) await walk(entry, entry.name, files)
  const [only] = entries
  if (entries.length !== 1 || !only?.isDirectory) return { folder: null, files }
  return { folder: only.name, files: files.map((file) => ({ ...file, path: file.path.slice(only.name.length + 1) })) }
}

async function walk(entry: FileSystemEntry, path: string, into: SourceFile[]): Promise<void> {
  if (into.length >= MOST_FILES) return
  if (entry.isFile) {
    const bytes = await new Promise<File>((resolve, reject) => (entry as FileSystemFileEntry).file(resolve, reject))
    into.push({ path, bytes })
    return
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader()
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject))
    if (some.length === 0) return
    for (const each of some) await walk(each, `${path}/${each.name}`, into)
  }
}
