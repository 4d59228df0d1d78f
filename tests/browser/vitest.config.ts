import { resolve } from 'node:path'
import { defineConfig } from 'vitest/config'

/** Tests that record: a machine that does something else beside them leaves pieces of the sound out. */
const SOUND = ['record', 'kill', 'full', 'yard', 'handsFree'].map((name) => `tests/browser/${name}.test.ts`)

/** The built page in a real Chromium; build it first (`npm run test:browser` does). */
export default defineConfig({
  root: resolve(import.meta.dirname, '../..'),
  test: {
    env: { TZ: 'UTC', LANG: 'C.UTF-8' },
    testTimeout: 240_000,
    hookTimeout: 240_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'screens',
          include: ['tests/browser/**/*.test.ts'],
          exclude: SOUND,
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        // One file after the other, once all others are through.
        test: { name: 'sound', include: SOUND, maxWorkers: 1, sequence: { groupOrder: 1 } },
      },
    ],
  },
})
