import { mkdirSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { clipFile, demoSheetFiles } from '../../shared/synth/demoFiles'
import { demoYard } from '../../shared/synth/demoJob'

/** Makes `demo-audio/`, byte for byte the same every time: `npm run demo-audio`. */
const folder = resolve(import.meta.dirname, '../../demo-audio')
mkdirSync(folder, { recursive: true })
const yard = demoYard()
let total = 0
for (const file of demoSheetFiles()) total += write(file.path, file.bytes)
for (const plan of yard.clips) {
  const file = clipFile(yard, plan)
  total += write(file.path, file.bytes)
}
console.log(`${folder}: ${yard.clips.length} clips, ${(total / 1e6).toFixed(2)} MB`)

function write(path: string, bytes: Uint8Array): number {
  writeFileSync(resolve(folder, path), bytes)
  return bytes.length
}
