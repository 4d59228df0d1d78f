import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** A sound server of its own whose only microphone gives what is played into it, sample by sample, at 48 kHz. */
export interface SoundServer {
  /** For programs that are to use it. */
  readonly env: Readonly<Record<string, string>>
  /** Plays a WAV file into the microphone, in the background. */
  readonly play: (wav: Uint8Array) => void
  readonly close: () => void
}

/**
 * Starts PulseAudio with a sink that leads nowhere and a microphone that hears it; installs it when it is not there.
 *
 * @throws when it cannot be installed or does not start.
 */
export async function soundServer(): Promise<SoundServer> {
  ensurePulseAudio()
  const folder = mkdtempSync(join(tmpdir(), 'yardhark-sound-'))
  const config = join(folder, 'daemon.conf')
  writeFileSync(
    config,
    'default-sample-rate = 48000\nalternate-sample-rate = 48000\ndefault-sample-format = float32le\nexit-idle-time = -1\n',
  )
  const socket = join(folder, 'native')
  const env = {
    XDG_RUNTIME_DIR: folder,
    PULSE_CONFIG: config,
    PULSE_SERVER: `unix:${socket}`,
    PULSE_RUNTIME_PATH: folder,
  }
  const daemon = spawn(
    'pulseaudio',
    [
      '-n',
      '--daemonize=no',
      '--use-pid-file=no',
      `--load=module-native-protocol-unix auth-anonymous=1 socket=${socket}`,
      '--load=module-null-sink sink_name=ns rate=48000 format=float32le channels=1',
      '--load=module-remap-source source_name=mic master=ns.monitor rate=48000 channels=1 remix=no',
    ],
    { env: { ...process.env, ...env }, stdio: 'ignore' },
  )
  await startedServer(env)
  const players: ChildProcess[] = []
  return {
    env,
    play: (wav) => {
      const path = join(folder, `played-${players.length}.wav`)
      writeFileSync(path, wav)
      players.push(
        spawn('paplay', ['--device=ns', '--latency-msec=2000', path], {
          env: { ...process.env, ...env },
          stdio: 'ignore',
        }),
      )
    },
    close: () => {
      for (const child of [...players, daemon]) child.kill('SIGKILL')
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

async function startedServer(env: Readonly<Record<string, string>>): Promise<void> {
  for (let tries = 0; tries < 150; tries++) {
    const set = spawnSync('pactl', ['set-default-source', 'mic'], { env: { ...process.env, ...env }, stdio: 'ignore' })
    if (set.status === 0) return
    await new Promise((resolve) => setTimeout(resolve, 200))
  }
  throw new Error('pulseaudio does not answer')
}

function ensurePulseAudio(): void {
  const isThere = () => ['pulseaudio', 'pactl', 'paplay'].every((name) => existsSync(`/usr/bin/${name}`))
  if (isThere()) return
  const asRoot = process.getuid?.() === 0 ? [] : ['sudo', '-n']
  const apt = (...args: string[]) => {
    const [command, ...rest] = [...asRoot, 'apt-get', ...args]
    execFileSync(command!, rest, { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } })
  }
  const install = ['install', '-y', '--no-install-recommends', 'pulseaudio', 'pulseaudio-utils']
  try {
    apt(...install)
  } catch {
    apt('update')
    apt(...install)
  }
  if (!isThere()) throw new Error('no pulseaudio; install it (apt-get install pulseaudio pulseaudio-utils)')
}
