import { resolve } from 'node:path'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  define: { YARDHARK_CORE: JSON.stringify('of the tests') },
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**'],
    env: { TZ: 'UTC', LANG: 'C.UTF-8' },
    testTimeout: 60_000,
    fileParallelism: true,
  },
})
