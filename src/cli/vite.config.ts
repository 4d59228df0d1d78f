import { chmodSync, existsSync, readFileSync, rmSync, symlinkSync } from 'node:fs'
import { relative, resolve } from 'node:path'
import { defineConfig, type Plugin } from 'vite'

const root = resolve(import.meta.dirname, '../..')
const { version } = JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8')) as { version: string }

/**
 * Makes the built file a command, and puts it where npx looks before it asks a registry.
 *
 * A `bin` entry in package.json would not do: asked for a package's own bin, npx first installs the package into its
 * cache and runs `prepare` again.
 */
function command(): Plugin {
  let file = ''
  return {
    name: 'command',
    configResolved(config) {
      file = resolve(root, config.build.outDir, 'yardhark.js')
    },
    closeBundle() {
      chmodSync(file, 0o755)
      const bin = resolve(root, 'node_modules/.bin')
      if (file !== resolve(root, 'dist/cli/yardhark.js') || !existsSync(bin)) return
      const link = resolve(bin, 'yardhark')
      rmSync(link, { force: true })
      symlinkSync(relative(bin, file), link)
    },
  }
}

/** One file that Node runs: src/cli with the core and its packages inside, for a quick start. */
export default defineConfig({
  root,
  publicDir: false,
  logLevel: 'warn',
  define: { YARDHARK_VERSION: JSON.stringify(version) },
  plugins: [command()],
  ssr: { noExternal: true },
  // Its modules for bundlers import a package that it does not depend on; the one file for Node has all inside.
  resolve: { alias: { meyda: resolve(root, 'node_modules/meyda/dist/node/main.js') } },
  build: {
    ssr: true,
    target: 'node20',
    outDir: 'dist/cli',
    emptyOutDir: true,
    minify: false,
    rolldownOptions: {
      input: resolve(root, 'src/cli/main.ts'),
      output: { format: 'es', entryFileNames: 'yardhark.js', banner: '#!/usr/bin/env node', codeSplitting: false },
    },
  },
})
