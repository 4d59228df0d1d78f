import { execFileSync } from 'node:child_process'
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs'
import { join, resolve } from 'node:path'

/** Everything fetched and decoded; inside node_modules so that `npm ci` starts afresh and git never sees it. */
export const CACHE_FOLDER = resolve(import.meta.dirname, '../../../node_modules/.cache/yardhark/sounds')

/**
 * The unpacked files of a Debian package, fetched once; nothing is installed.
 *
 * @param name Package name.
 * @returns Folder that holds the package's files as if it were `/`.
 * @throws When neither the cache nor the archive can give the package; the message says what to do.
 */
export async function fetchPackage(name: string): Promise<string> {
  const folder = join(CACHE_FOLDER, 'packages', name)
  if (existsSync(folder)) return folder
  mkdirSync(join(CACHE_FOLDER, 'packages'), { recursive: true })
  const unlock = await lock(`${folder}.lock`)
  try {
    if (!existsSync(folder)) unpackFromArchive(name, folder)
  } finally {
    unlock()
  }
  return folder
}

function unpackFromArchive(name: string, folder: string): void {
  const work = `${folder}.work`
  rmSync(work, { recursive: true, force: true })
  mkdirSync(join(work, 'files'), { recursive: true })
  try {
    download(name, work)
    const deb = readdirSync(work).find((file) => file.endsWith('.deb'))!
    execFileSync('dpkg-deb', ['-x', join(work, deb), join(work, 'files')])
    renameSync(join(work, 'files'), folder)
  } finally {
    rmSync(work, { recursive: true, force: true })
  }
}

function download(name: string, folder: string): void {
  const get = () => execFileSync('apt-get', ['download', '-q', name], { cwd: folder, stdio: 'pipe' })
  try {
    get()
  } catch {
    try {
      execFileSync('apt-get', ['update', '-q'], { stdio: 'pipe' })
      get()
    } catch (error) {
      const said = String((error as { stderr?: Buffer }).stderr ?? error).trim()
      throw new Error(
        `the real sounds need the Debian package ${name}, and it could not be fetched: ` +
          `run "apt-get update && apt-get download ${name}" to see why (${said.split('\n').at(-1)})`,
      )
    }
  }
}

/** Holds a file named after this process; waits for a living holder, takes over from a dead one. */
async function lock(path: string): Promise<() => void> {
  for (;;) {
    try {
      const file = openSync(path, 'wx')
      writeSync(file, String(process.pid))
      closeSync(file)
      return () => rmSync(path, { force: true })
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
      if (!holderLives(path)) rmSync(path, { force: true })
      else await new Promise((wake) => setTimeout(wake, 200))
    }
  }
}

function holderLives(path: string): boolean {
  try {
    const pid = Number(readFileSync(path, 'utf8'))
    if (pid === 0) return true // the holder has not written its number yet
    process.kill(pid, 0)
    return true
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}
