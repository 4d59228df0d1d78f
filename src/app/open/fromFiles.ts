import type { Source, SourceFile } from './source'

/** What a picker gave: a whole folder, or loose files. A single zip is left to `fromZip`. */
export function fromFiles(files: readonly File[], looseName: string): Source {
  const placed: SourceFile[] = files.map((file) => ({ path: file.webkitRelativePath || file.name, bytes: file }))
  const [folder] = files[0]?.webkitRelativePath.split('/') ?? []
  if (!folder) return { name: looseName, files: placed }
  return {
    name: folder,
    files: placed.map(({ path, bytes }) => ({ path: path.slice(folder.length + 1), bytes })),
  }
}

/** True for a file that is to be unpacked. */
export function isZip(file: File): boolean {
  return /\.zip$/i.test(file.name) || file.type === 'application/zip' || file.type === 'application/x-zip-compressed'
}
