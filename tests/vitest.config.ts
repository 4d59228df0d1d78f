import { resolve } from 'node:path'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  // What the builds of page and command line put in.
  define: { YARDHARK_VERSION: '"0.0.0-test"', YARDHARK_CORE: '"test"' },
  test: {
    env: { TZ: 'UTC', LANG: 'C.UTF-8' },
    // The tests start with all words, as the command line does.
    setupFiles: [resolve(import.meta.dirname, '../shared/words/speakAll.ts')],
    testTimeout: 60_000,
    // By itself it would leave one processor out, which of two is half.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        // The core keeps nothing between calls, so its files share a process: starting one for each costs more than a third of all.
        test: {
          name: 'core',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/src/app/**'],
          isolate: false,
        },
      },
      {
        extends: true,
        // The page's put a browser's names into the global scope.
        test: { name: 'page', include: ['tests/src/app/**/*.test.ts'] },
      },
    ],
  },
})
