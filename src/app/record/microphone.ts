import type { MicrophoneSettings } from '../../../shared/job/recording'
import type { CaptureCommand, CaptureReport } from './captureMessages'
import captureUrl from './captureWorklet.ts?worker&url'

/** Why there is no microphone, as a key of the words. */
export type MicrophoneFault = 'mic_not_secure' | 'mic_refused' | 'mic_none' | 'mic_busy' | 'mic_failed'

export class MicrophoneError extends Error {
  constructor(
    readonly fault: MicrophoneFault,
    readonly why: string,
  ) {
    super(`${fault}: ${why}`)
  }
}

export interface MicrophoneListeners {
  readonly onReport: (report: CaptureReport) => void
  /** The microphone was unplugged, or taken away by the phone. */
  readonly onGone: () => void
  /** The phone holds the sound back for a while: a call, another app. */
  readonly onHeldBack: () => void
}

/** An open microphone. The one owner of its stream and of the audio thread; `close` gives both back. */
export interface Microphone {
  readonly context: AudioContext
  readonly source: AudioNode
  readonly analyser: AnalyserNode
  readonly device: string
  readonly deviceId: string | null
  readonly settings: MicrophoneSettings
  readonly command: (command: CaptureCommand, transfer?: readonly Transferable[]) => void
  readonly close: () => void
}

/** True where the browser lets a page use the microphone at all: served securely, or from this very machine. */
export function canListen(): boolean {
  return window.isSecureContext && navigator.mediaDevices !== undefined
}

/**
 * Opens a microphone with all processing asked off, at the rate that it has.
 *
 * @param deviceId `null` for whichever the browser takes; also taken when the wanted one is not there.
 * @throws {MicrophoneError} there is none to be had.
 */
export async function openMicrophone(deviceId: string | null, listeners: MicrophoneListeners): Promise<Microphone> {
  if (!canListen()) throw new MicrophoneError('mic_not_secure', '')
  const stream = await streamOf(deviceId)
  try {
    return await microphoneOf(stream, listeners)
  } catch (error) {
    stop(stream)
    throw new MicrophoneError('mic_failed', String(error))
  }
}

/** The microphones there are; without names until one was allowed. */
export async function listMicrophones(): Promise<{ readonly id: string; readonly name: string }[]> {
  const devices = (await navigator.mediaDevices?.enumerateDevices()) ?? []
  return devices
    .filter(({ kind, deviceId }) => kind === 'audioinput' && deviceId !== '')
    .map(({ deviceId, label }) => ({ id: deviceId, name: label }))
}

/** [MediaCapture] in shared/base/sources.ts: a wish only, so that what came of it is read back. */
const PLAIN_SOUND = { echoCancellation: false, noiseSuppression: false, autoGainControl: false } as const

async function streamOf(deviceId: string | null): Promise<MediaStream> {
  try {
    const audio = deviceId === null ? PLAIN_SOUND : { ...PLAIN_SOUND, deviceId: { exact: deviceId } }
    return await navigator.mediaDevices.getUserMedia({ audio })
  } catch (error) {
    const { name, message } = error as DOMException
    if (deviceId !== null && (name === 'OverconstrainedError' || name === 'NotFoundError')) return streamOf(null)
    throw new MicrophoneError(FAULTS[name] ?? 'mic_failed', message || name)
  }
}

const FAULTS: Readonly<Record<string, MicrophoneFault>> = {
  NotAllowedError: 'mic_refused',
  SecurityError: 'mic_refused',
  NotFoundError: 'mic_none',
  NotReadableError: 'mic_busy',
  AbortError: 'mic_busy',
}

async function microphoneOf(stream: MediaStream, listeners: MicrophoneListeners): Promise<Microphone> {
  const [track] = stream.getAudioTracks()
  if (track === undefined) throw new Error('the stream has no sound')
  const told = track.getSettings()
  const context = contextAt(told.sampleRate)
  try {
    await Promise.all([context.audioWorklet.addModule(captureUrl), context.resume()])
  } catch (error) {
    void context.close()
    throw error
  }
  const source = new MediaStreamAudioSourceNode(context, { mediaStream: stream })
  const analyser = new AnalyserNode(context, { fftSize: 4096, smoothingTimeConstant: 0.6 })
  const capture = new AudioWorkletNode(context, 'capture', { numberOfOutputs: 1, channelInterpretation: 'discrete' })
  capture.port.onmessage = ({ data }: MessageEvent<CaptureReport>) => listeners.onReport(data)
  source.connect(analyser)
  source.connect(capture)
  capture.connect(context.destination) // it lets nothing through, but only what leads somewhere is worked on
  track.addEventListener('ended', listeners.onGone)
  track.addEventListener('mute', listeners.onHeldBack)
  context.addEventListener('statechange', () => {
    if (context.state !== 'running' && context.state !== 'closed') listeners.onHeldBack()
  })
  return {
    context,
    source,
    analyser,
    device: track.label,
    deviceId: told.deviceId ?? null,
    settings: settingsOf(told),
    command: (command, transfer = []) => capture.port.postMessage(command, [...transfer]),
    close: () => {
      track.removeEventListener('ended', listeners.onGone)
      capture.port.onmessage = null
      stop(stream)
      void context.close()
    },
  }
}

/** At the microphone's own rate nothing is turned into another on the way. Some browsers do not have every rate. */
function contextAt(sampleRateHz: number | undefined): AudioContext {
  try {
    return sampleRateHz === undefined ? new AudioContext() : new AudioContext({ sampleRate: sampleRateHz })
  } catch {
    return new AudioContext()
  }
}

function settingsOf(told: MediaTrackSettings): MicrophoneSettings {
  const { echoCancellation, noiseSuppression, autoGainControl, sampleRate, sampleSize, channelCount } = told
  return {
    // Some browsers name the kind of echo cancellation instead of true.
    echoCancellation: echoCancellation === undefined ? null : Boolean(echoCancellation),
    noiseSuppression: noiseSuppression ?? null,
    autoGainControl: autoGainControl ?? null,
    sampleRateHz: sampleRate ?? null,
    sampleSizeBits: sampleSize ?? null,
    channelCount: channelCount ?? null,
  }
}

function stop(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop()
}
