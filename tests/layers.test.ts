import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { expect, it } from 'vitest'

const root = resolve(import.meta.dirname, '..')

/** Folder or file → the folders, files and packages it may import besides itself. This table is the drawing of the house. */
const MAY_IMPORT: Record<string, string[]> = {
  'shared/base': [],
  'shared/audio': ['shared/base', 'wavefile'],
  'shared/line': ['shared/base'],
  'shared/pressure': ['shared/base', 'shared/line'],
  'shared/words': ['shared/base'],
  'shared/spectrum': ['shared/base', 'shared/audio', 'fft.js', 'meyda'],
  'shared/bubbles': ['shared/base', 'shared/audio', 'shared/spectrum'],
  'shared/evidence': ['shared/base', 'shared/audio', 'shared/spectrum', 'shared/bubbles'],
  'shared/listen': ['shared/base', 'shared/spectrum', 'shared/bubbles'],
  'shared/ground': ['shared/base', 'shared/line'],
  'shared/sweep': ['shared/base', 'shared/line'],
  'shared/locate': ['shared/base', 'shared/evidence', 'shared/ground', 'shared/line', 'shared/sweep'],
  'shared/synth': [
    'shared/base',
    'shared/audio',
    'shared/bubbles',
    'shared/ground',
    'shared/line',
    'shared/sweep',
    'shared/spectrum',
    'shared/evidence',
  ],
  'shared/learn': [
    'shared/base',
    'shared/audio',
    'shared/bubbles/ring.ts',
    'shared/evidence',
    'shared/spectrum/timbre.ts',
    'shared/sweep',
  ],
  'shared/answer': ['shared/base', 'shared/evidence', 'shared/line', 'shared/sweep', 'shared/locate', 'shared/words'],
  'shared/job': ['shared/base', 'shared/line', 'shared/sweep', 'shared/evidence', 'shared/locate', 'shared/pressure'],
  'shared/opinion': ['shared/base', 'shared/job'],
  'shared/flac': ['shared/base', 'shared/audio/riffChunks.ts'],
  'shared/jobfile': [
    'shared/base',
    'shared/flac',
    'shared/audio',
    'shared/bubbles/ring.ts',
    'shared/sweep/safePath.ts',
    'shared/job',
    'fflate',
  ],
  'shared/sketch': ['shared/base', 'shared/line', 'shared/sweep', 'shared/evidence', 'shared/locate', 'shared/job'],
  'shared/report': [
    'shared/base',
    'shared/line',
    'shared/locate',
    'shared/job',
    'shared/pressure',
    'shared/sketch',
    'shared/words',
  ],
  'shared/record': ['shared/base', 'shared/audio', 'shared/line', 'shared/sweep', 'shared/evidence', 'shared/job'],
  'shared/practice': [
    'shared/base',
    'shared/audio',
    'shared/line',
    'shared/pressure',
    'shared/spectrum',
    'shared/bubbles',
    'shared/evidence',
    'shared/sweep',
    'shared/locate',
    'shared/synth',
    'shared/job',
    'shared/jobfile',
  ],
  'src/worker': ['shared', 'fflate'],
  'src/cli': ['shared', 'node:'],
  'src/app': ['shared', 'src/worker/protocol.ts', 'react', 'react-dom', 'chart.js', 'fflate', 'idb'],
}

/** Package → the only file or folder of shared and src that may import it. */
const DOORS: Record<string, string> = {
  'fft.js': 'shared/spectrum/powerSpectrum.ts',
  meyda: 'shared/spectrum/timbre.ts',
  wavefile: 'shared/audio/broadcastChunks.ts',
  'chart.js': 'src/app/charts/',
  react: 'src/app/',
}

const files = ['shared', 'src'].flatMap((top) =>
  readdirSync(join(root, top), { recursive: true, encoding: 'utf8' })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => /\.tsx?$/.test(name) && !/(\.config|\.d)\.ts$/.test(name))
    .map((name) => `${top}/${name}`),
)

const importsOf = (file: string) =>
  [...readFileSync(join(root, file), 'utf8').matchAll(/(?:\bfrom|\bimport)\s*\(?\s*['"]([^'"\n]+)['"]/g)].map(
    ([, spec]) => {
      if (!spec!.startsWith('.')) return spec!
      const path = relative(root, resolve(root, dirname(file), spec!)).replaceAll('\\', '/')
      return files.find((f) => f === path || f.replace(/\.tsx?$/, '') === path) ?? path
    },
  )

const layerOf = (file: string) => Object.keys(MAY_IMPORT).find((layer) => file.startsWith(`${layer}/`))

const within = (target: string, allowed: string) =>
  target === allowed || target.startsWith(allowed.endsWith(':') ? allowed : `${allowed}/`)

it('knows the layer of every file', () => {
  expect(files.filter((file) => !layerOf(file))).toEqual([])
})

it('has no import against the layers', () => {
  const wrong = files.flatMap((from) =>
    importsOf(from)
      .filter((to) => !within(to, layerOf(from)!) && !MAY_IMPORT[layerOf(from)!]!.some((x) => within(to, x)))
      .map((to) => `${from} → ${to}`),
  )
  expect(wrong).toEqual([])
})

it('lets each outside package in by one door', () => {
  const wrong = files.flatMap((from) =>
    importsOf(from)
      .filter((to) => Object.entries(DOORS).some(([name, door]) => within(to, name) && !from.startsWith(door)))
      .map((to) => `${from} → ${to}`),
  )
  expect(wrong).toEqual([])
})

it('has no import through a folder and no re-exporting front door', () => {
  const wrong = files.filter(
    (file) => /\/index\.tsx?$/.test(file) || /^export \*/m.test(readFileSync(join(root, file), 'utf8')),
  )
  expect(wrong).toEqual([])
})

it('has no import cycle, types included', () => {
  const done = new Set<string>()
  const cycles: string[] = []
  const visit = (file: string, path: string[]) => {
    if (path.includes(file)) {
      cycles.push([...path.slice(path.indexOf(file)), file].join(' → '))
      return
    }
    if (done.has(file)) return
    for (const next of importsOf(file)) if (files.includes(next)) visit(next, [...path, file])
    done.add(file)
  }
  for (const file of files) visit(file, [])
  expect(cycles).toEqual([])
})
