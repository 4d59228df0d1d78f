// What CI runs, from nothing: installs when needed, then types, lint and format, tests, each with its own line.
import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, statSync } from 'node:fs'
import { resolve } from 'node:path'

const root = resolve(import.meta.dirname, '..')
const counts = { passed: 0, failed: 0, notRun: 0 }

function run(title, command, args) {
  console.log(`\n== ${title}`)
  const started = Date.now()
  const { status } = spawnSync(command, args, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] })
  console.log(`-- ${title}: ${status === 0 ? 'good' : 'FAILED'}, ${((Date.now() - started) / 1000).toFixed(1)} s`)
  return status ?? 1
}

function mustRun(title, command, args) {
  const status = run(title, command, args)
  if (status !== 0) process.exit(status)
}

const bin = (name) => resolve(root, 'node_modules/.bin', name)

/** Runs one set of tests and adds up what passed, failed and was not run. A set that left a test out has failed. */
function runTests(title, config) {
  const report = resolve(root, 'node_modules/.cache/yardhark', `${title.replaceAll(' ', '-')}.json`)
  mkdirSync(resolve(report, '..'), { recursive: true })
  const status = run(title, bin('vitest'), [
    'run',
    '-c',
    config,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ])
  const { numPassedTests = 0, numFailedTests = 0, numPendingTests = 0 } = JSON.parse(readFileSync(report, 'utf8'))
  counts.passed += numPassedTests
  counts.failed += numFailedTests
  counts.notRun += numPendingTests
  return status !== 0 || numPassedTests === 0 || numPendingTests > 0
}

const installed = resolve(root, 'node_modules/.package-lock.json')
if (!existsSync(installed) || statSync(installed).mtimeMs < statSync(resolve(root, 'package-lock.json')).mtimeMs) {
  mustRun('packages', 'npm', ['ci', '--no-audit', '--no-fund'])
}
mustRun('types', bin('tsc'), ['-b'])
mustRun('lint and format', bin('biome'), ['check', '--error-on-warnings', '.'])
mustRun('command line', 'npm', ['run', '--silent', 'build:cli'])
let failed = runTests('tests', 'tests/vitest.config.ts')
if (existsSync(resolve(root, 'tests/browser/vitest.config.ts'))) {
  mustRun('browser', 'node', ['tests/support/ensureChromium.mjs'])
  mustRun('page', 'npm', ['run', '--silent', 'build', '--', '--logLevel', 'warn'])
  failed = runTests('browser tests', 'tests/browser/vitest.config.ts') || failed
}
console.log(`\n${counts.passed} passed, ${counts.failed} failed, ${counts.notRun} not run`)
process.exit(failed ? 1 : 0)
