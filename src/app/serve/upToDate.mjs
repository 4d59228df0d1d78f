import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join, resolve } from 'node:path'

const root = resolve(import.meta.dirname, '../../..')
const SOURCES = ['src/app', 'src/worker', 'shared', 'public', 'demo-audio', 'package.json', 'package-lock.json']

/** Installs the packages when they are missing or older than the lock file. */
export function installWhenNeeded() {
  const installed = changedMs('node_modules/.package-lock.json')
  if (installed >= changedMs('package-lock.json')) return
  run('Installing packages; this is done once.', npm(), ['ci', '--no-audit', '--no-fund', '--loglevel=error'])
}

/** Builds the page when it is missing or older than anything it is made of. */
export function buildWhenNeeded() {
  const built = changedMs('dist/app/index.html')
  if (SOURCES.every((source) => newestMs(join(root, source)) <= built)) return
  run('Building the page.', process.execPath, [
    resolve(root, 'node_modules/vite/bin/vite.js'),
    'build',
    '-c',
    'src/app/vite.config.ts',
    '--logLevel',
    'warn',
  ])
}

function npm() {
  return process.platform === 'win32' ? 'npm.cmd' : 'npm'
}

function run(title, command, args) {
  console.log(title)
  const { status, error } = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: command.endsWith('.cmd'),
  })
  if (status === 0) return
  throw new Error(`${[command, ...args].join(' ')} did not succeed${error ? `: ${error.message}` : ''}; see above`)
}

function changedMs(path) {
  const full = resolve(root, path)
  return existsSync(full) ? statSync(full).mtimeMs : 0
}

function newestMs(path) {
  const stat = statSync(path, { throwIfNoEntry: false })
  if (stat === undefined) return 0
  if (!stat.isDirectory()) return stat.mtimeMs
  return readdirSync(path).reduce((newest, name) => Math.max(newest, newestMs(join(path, name))), 0)
}
