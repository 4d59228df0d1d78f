import type { Source, SourceFile } from './source'

/**
 * The invented job that comes with the page.
 *
 * @param onDone Called with how many of its files are there.
 */
export async function fromDemo(
  name: string,
  signal: AbortSignal,
  onDone: (done: number, total: number) => void,
): Promise<Source> {
  const list = (await (await fetched('files.json', signal)).json()) as string[]
  const files: SourceFile[] = []
  for (const path of list) {
    onDone(files.length, list.length)
    files.push({ path, bytes: await (await fetched(path, signal)).blob() })
  }
  return { name, files }
}

async function fetched(path: string, signal: AbortSignal): Promise<Response> {
  const response = await fetch(new URL(`demo/${path}`, document.baseURI), { signal })
  if (!response.ok) throw new Error(`demo/${path}: ${response.status}`)
  return response
}
