import { mkdirSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { demoFiles } from '../../shared/synth/demoFiles'

/** Makes `demo-audio/`, byte for byte the same every time: `npm run demo-audio`. */
const folder = resolve(import.meta.dirname, '../../demo-audio')
mkdirSync(folder, { recursive: true })
let files = 0
let bytes = 0
for (const file of demoFiles()) {
  writeFileSync(resolve(folder, file.path), file.bytes)
  files++
  bytes += file.bytes.length
}
console.log(`${folder}: ${files} files, ${(bytes / 1e6).toFixed(2)} MB`)
