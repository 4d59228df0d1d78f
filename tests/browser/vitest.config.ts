import { resolve } from 'node:path'
import { defineConfig } from 'vitest/config'

/** The built page in a real Chromium; build it first (`npm run test:browser` does). */
export default defineConfig({
  root: resolve(import.meta.dirname, '../..'),
  test: {
    include: ['tests/browser/**/*.test.ts'],
    env: { TZ: 'UTC', LANG: 'C.UTF-8' },
    testTimeout: 240_000,
    hookTimeout: 240_000,
    maxWorkers: 2,
  },
})
