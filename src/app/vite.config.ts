import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig, type Plugin } from 'vite'
import { offlineCopy } from './offline/offlineCopy.config.ts'
import contentPolicy from './serve/contentPolicy.json' with { type: 'json' }

const root = resolve(import.meta.dirname, '../..')
const { version } = JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8')) as { version: string }

/** What the evidence of a clip depends on: kept evidence of another core is worked out again. */
function coreVersion(): string {
  const hash = createHash('sha256')
  for (const folder of ['base', 'audio', 'spectrum', 'bubbles', 'evidence']) {
    const names = readdirSync(join(root, 'shared', folder), { recursive: true, encoding: 'utf8' }).sort()
    for (const name of names.filter((each) => each.endsWith('.ts'))) {
      hash.update(name).update(readFileSync(join(root, 'shared', folder, name)))
    }
  }
  return hash.digest('hex').slice(0, 16)
}

/** The policy goes into the page itself, so that it holds wherever the folder is served. */
function policyInPage(): Plugin {
  const content = Object.entries(contentPolicy)
    .map((rule) => rule.join(' '))
    .join('; ')
  return {
    name: 'policy-in-page',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content }, injectTo: 'head-prepend' },
    ],
  }
}

/** The demo job lies beside the page, one tap away, with a list of its files. */
function demoFolder(): Plugin {
  const folder = resolve(root, 'demo-audio')
  const names = readdirSync(folder).filter((name) => /\.(wav|csv|json)$/.test(name) && name !== 'labels.csv')
  return {
    name: 'demo-folder',
    apply: 'build',
    generateBundle() {
      for (const name of names) {
        this.emitFile({ type: 'asset', fileName: `demo/${name}`, source: readFileSync(join(folder, name)) })
      }
      this.emitFile({ type: 'asset', fileName: 'demo/files.json', source: JSON.stringify(names) })
    },
  }
}

/** Whoever starts the page wants its address, not how long the parts of the build took. */
const rolldownOptions = { checks: { pluginTimings: false } }

export default defineConfig({
  root: import.meta.dirname,
  base: './',
  publicDir: resolve(root, 'public'),
  plugins: [react(), policyInPage(), demoFolder(), offlineCopy()],
  define: { YARDHARK_VERSION: JSON.stringify(version), YARDHARK_CORE: JSON.stringify(coreVersion()) },
  worker: { format: 'es', rolldownOptions },
  build: {
    outDir: resolve(root, 'dist/app'),
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    rolldownOptions,
  },
})
