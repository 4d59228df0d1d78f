import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { build } from 'vite'

const root = resolve(import.meta.dirname, '../..')

/** Builds the command as it is shipped, into a folder of its own, and says where it is. */
export async function buildCli(): Promise<string> {
  const outDir = mkdtempSync(join(tmpdir(), 'yardhark-cli-'))
  await build({ configFile: join(root, 'src/cli/vite.config.ts'), logLevel: 'error', build: { outDir } })
  return join(outDir, 'yardhark.js')
}

export interface CliRun {
  readonly code: number | null
  readonly stdout: string
  readonly stderr: string
}

/** Runs the command in a process of its own, with nothing on its input. */
export function runCli(program: string, args: readonly string[], cwd?: string): CliRun {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    encoding: 'utf8',
    maxBuffer: 64e6,
    ...(cwd === undefined ? {} : { cwd }),
  })
  return { code: status, stdout, stderr }
}

/** A new folder with these files in it; a text is written as UTF-8. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'yardhark-sweep-'))
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true })
    writeFileSync(join(folder, name), content)
  }
  return folder
}

/** A short clip of noise, 16-bit PCM at 8 kHz, made here so that it owes nothing to the program's own writer. */
export function noiseClip(durationS: number, level = 0.1): Uint8Array {
  const samples = Math.round(durationS * 8000)
  const bytes = Buffer.alloc(44 + 2 * samples)
  bytes.write('RIFF', 0, 'latin1')
  bytes.writeUInt32LE(36 + 2 * samples, 4)
  bytes.write('WAVEfmt ', 8, 'latin1')
  bytes.writeUInt32LE(16, 16)
  bytes.writeUInt16LE(1, 20)
  bytes.writeUInt16LE(1, 22)
  bytes.writeUInt32LE(8000, 24)
  bytes.writeUInt32LE(16_000, 28)
  bytes.writeUInt16LE(2, 32)
  bytes.writeUInt16LE(16, 34)
  bytes.write('data', 36, 'latin1')
  bytes.writeUInt32LE(2 * samples, 40)
  let state = 1
  for (let i = 0; i < samples; i++) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    bytes.writeInt16LE(Math.round(level * 32_767 * (state / 2 ** 31 - 1)), 44 + 2 * i)
  }
  return bytes
}
