import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, relative, resolve } from 'node:path'
import { type Plugin, transformWithOxc } from 'vite'
import type { OfflineFile } from './messages'

const SCRIPT = 'sw.js'

/**
 * Writes the service worker beside the built page, with the list of all files of the build and their digests: whatever
 * changes in the build changes the script, and by that the browser knows of a newer version.
 */
export function offlineCopy(): Plugin {
  let folder = ''
  return {
    name: 'offline-copy',
    apply: 'build',
    configResolved(config) {
      folder = resolve(config.root, config.build.outDir)
    },
    async closeBundle() {
      await writeServiceWorker(folder)
    },
  }
}

/** Lists a built folder and puts its service worker into it, in place of an older one. */
export async function writeServiceWorker(folder: string): Promise<void> {
  writeFileSync(join(folder, SCRIPT), await serviceWorkerText(builtFiles(folder)))
}

/** Every file of a built folder but the service worker itself, the page first, then what it is made of, the demo last. */
export function builtFiles(folder: string): OfflineFile[] {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .filter((path) => path !== SCRIPT)
  const turn = (path: string) => (path === 'index.html' ? 0 : path.startsWith('demo/') ? 2 : 1)
  return paths
    .sort((a, b) => turn(a) - turn(b) || (a < b ? -1 : 1))
    .map((path) => ({
      path,
      sha256: createHash('sha256')
        .update(readFileSync(join(folder, path)))
        .digest('hex'),
    }))
}

/** The script for these files. */
export async function serviceWorkerText(files: readonly OfflineFile[]): Promise<string> {
  const source = resolve(import.meta.dirname, 'worker/serviceWorker.ts')
  const { code } = await transformWithOxc(readFileSync(source, 'utf8'), source, { sourcemap: false })
  const script = code.replace(/^export\s*\{\s*\};?\s*$/m, '').replace(/^\/\/# sourceMappingURL.*$/m, '')
  const list = JSON.stringify(files)
  const version = createHash('sha256').update(list).update(script).digest('hex').slice(0, 16)
  return `const OFFLINE_VERSION = '${version}'\nconst OFFLINE_FILES = ${list}\n${script}`
}
