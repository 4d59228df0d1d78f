import { resolve } from 'node:path'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  // What the builds of page and command line put in.
  define: { YARDHARK_VERSION: '"0.0.0-test"', YARDHARK_CORE: '"test"' },
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**'],
    env: { TZ: 'UTC', LANG: 'C.UTF-8' },
    testTimeout: 60_000,
    fileParallelism: true,
  },
})
