import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import { Random } from '../../shared/base/random'
import { CATALOGUE, type CatalogueSound } from './realSounds/catalogue'
import { decode, type MonoSound } from './realSounds/decode'
import { CACHE_FOLDER, fetchPackage } from './realSounds/fetchPackage'
import { readGroup } from './realSounds/readGroup'

/** Strokes are repeated until a clip has this length, s. */
const STROKES_LAST_S = 8

/**
 * A sound that nobody of this project made, from a Debian package that is fetched when first asked for.
 *
 * @param name Name in `CATALOGUE` (tests/support/realSounds/catalogue.ts).
 * @returns Mono at the native rate and level (44 100 Hz mostly; speech 8 000 or 16 000, some 48 000 or 11 025).
 * @throws When the name is not in the catalogue or the package cannot be fetched.
 */
export async function realSound(name: string): Promise<MonoSound> {
  const entry = CATALOGUE.find((sound) => sound.name === name)
  if (entry === undefined) throw new Error(`no real sound is called ${name}; the catalogue has the names`)
  const cached = join(CACHE_FOLDER, 'decoded', `${name}.f32`)
  if (!existsSync(cached)) store(cached, await make(entry))
  return load(cached)
}

async function make(entry: CatalogueSound): Promise<MonoSound> {
  const folder = await fetchPackage(entry.package)
  const sounds: MonoSound[] = []
  for (const path of entry.paths) sounds.push(await decode(path, fileBytes(folder, path)))
  return entry.strokeEveryS === null ? sounds[0]! : layStrokes(entry.name, sounds, entry.strokeEveryS)
}

function fileBytes(folder: string, path: string): Uint8Array {
  const [outer, inner] = path.split('!') as [string, string | undefined]
  const bytes = readFileSync(join(folder, outer))
  if (inner === undefined) return bytes
  if (outer.endsWith('.ocg')) return readGroup(bytes, inner)
  const found = unzipSync(bytes, { filter: (file) => file.name === inner })[inner]
  if (found === undefined) throw new Error(`${outer} has no ${inner}`)
  return found
}

function layStrokes(name: string, strokes: readonly MonoSound[], everyS: number): MonoSound {
  const random = new Random(`strokes/${name}`)
  const sampleRateHz = strokes[0]!.sampleRateHz
  const samples = new Float32Array(Math.round(STROKES_LAST_S * sampleRateHz))
  let atS = 0.3
  for (let i = 0; atS < STROKES_LAST_S - 0.3; i++) {
    const stroke = strokes[i % strokes.length]!.samples
    const start = Math.round(atS * sampleRateHz)
    for (let k = 0; k < stroke.length && start + k < samples.length; k++) samples[start + k]! += stroke[k]!
    atS += everyS * random.uniform(0.9, 1.1)
  }
  return { samples, sampleRateHz }
}

/** Eight bytes of head (rate and length, 32 bits each), then the samples; written whole or not at all. */
function store(path: string, sound: MonoSound): void {
  mkdirSync(join(CACHE_FOLDER, 'decoded'), { recursive: true })
  const head = Uint32Array.of(sound.sampleRateHz, sound.samples.length)
  const work = `${path}.${process.pid}`
  writeFileSync(
    work,
    Buffer.concat([
      Buffer.from(head.buffer),
      Buffer.from(sound.samples.buffer, sound.samples.byteOffset, sound.samples.byteLength),
    ]),
  )
  renameSync(work, path)
}

function load(path: string): MonoSound {
  const bytes = readFileSync(path)
  const head = new Uint32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + 8))
  const samples = new Float32Array(bytes.buffer.slice(bytes.byteOffset + 8, bytes.byteOffset + bytes.length))
  return { samples, sampleRateHz: head[0]! }
}
