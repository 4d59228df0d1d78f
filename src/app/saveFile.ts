/** How long the browser gets to take a file before its memory is given back, ms. Chosen. */
const TAKEN_MS = 60_000

/** Hands a file to whoever uses the page. */
export function saveFile(name: string, content: BlobPart, mediaType: string): void {
  const url = URL.createObjectURL(new Blob([content], { type: mediaType }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), TAKEN_MS)
}
