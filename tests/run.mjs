// What CI runs, from nothing: installs when needed, then types, lint and format, tests, each with its own line.
import { spawnSync } from 'node:child_process'
import { existsSync, statSync } from 'node:fs'
import { resolve } from 'node:path'

const root = resolve(import.meta.dirname, '..')
const run = (title, command, args) => {
  console.log(`\n== ${title}`)
  const started = Date.now()
  const { status } = spawnSync(command, args, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] })
  console.log(`-- ${title}: ${status === 0 ? 'good' : 'FAILED'}, ${((Date.now() - started) / 1000).toFixed(1)} s`)
  if (status !== 0) process.exit(status ?? 1)
}

const installed = resolve(root, 'node_modules/.package-lock.json')
const lock = resolve(root, 'package-lock.json')
if (!existsSync(installed) || statSync(installed).mtimeMs < statSync(lock).mtimeMs) {
  run('packages', 'npm', ['ci', '--no-audit', '--no-fund'])
}

const bin = (name) => resolve(root, 'node_modules/.bin', name)
run('types', bin('tsc'), ['-b'])
run('lint and format', bin('biome'), ['check', '--error-on-warnings', '.'])
run('command line', 'npm', ['run', '--silent', 'build:cli'])
run('tests', bin('vitest'), ['run', '-c', 'tests/vitest.config.ts'])
