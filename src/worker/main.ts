import type { Clip } from '../../shared/audio/clip'
import { readWav } from '../../shared/audio/readWav'
import { strongestChannel } from '../../shared/audio/strongestChannel'
import { FormatError } from '../../shared/base/errors'
import { heardClip } from '../../shared/evidence/heardClip'
import { measuredValues } from '../../shared/learn/measuredValues'
import { locate } from '../../shared/locate/locate'
import { makeQuestion } from '../../shared/practice/drills/makeQuestion'
import { setQuestion } from '../../shared/practice/set/setQuestion'
import { withoutTelling } from '../../shared/practice/withoutTelling'
import { judgeHold } from '../../shared/pressure/judgeHold'
import { spectrogram } from '../../shared/spectrum/spectrogram'
import { spectrogramRows } from '../../shared/spectrum/spectrogramRows'
import { welch } from '../../shared/spectrum/welch'
import { openFile } from './openFile'
import { packJob } from './packJob'
import type { CallName, Calls, Reply, Request, Sound } from './protocol'
import { readFolder } from './readFolder'
import { unzip } from './unzip'
import { zip } from './zip'

type Serve<Name extends CallName> = (
  input: Calls[Name]['in'],
  hand: (part: Calls[Name]['part'], transfer: Transferable[]) => void,
) => Calls[Name]['out'] | Promise<Calls[Name]['out']>

const SERVE: { readonly [Name in CallName]: Serve<Name> } = {
  hear: ({ sound }) => heardClip(() => clipOf(sound)),
  locate: (input) => locate(input),
  measure: ({ sound }) => measuredValues(clipOf(sound)),
  spectrum: ({ sound, segmentS }) => {
    const { samples, sampleRateHz } = plainSamples(sound)
    return welch(samples, sampleRateHz, { segmentLength: segmentLength(segmentS, sampleRateHz) })
  },
  spectrogram: ({ sound, segmentS, maxColumns, rows }) => {
    const { samples, sampleRateHz } = plainSamples(sound)
    const whole = spectrogram(samples, sampleRateHz, {
      segmentLength: segmentLength(segmentS, sampleRateHz),
      overlap: 0.75,
      maxColumns,
    })
    return { ...spectrogramRows(whole, rows), timesS: whole.timesS }
  },
  samples: ({ sound }) => plainSamples(sound),
  judgeHold: ({ test, pipe }) => judgeHold(test, pipe),
  practice: (order) => makeQuestion(order),
  setQuestion: (input) => setQuestion(input),
  withoutTelling: ({ clip, telling }) => ({
    samples: withoutTelling(clip.channels[0]!, clip.sampleRateHz, telling),
    sampleRateHz: clip.sampleRateHz,
  }),
  readFolder,
  zip: ({ files }, hand) => zip(files, (done) => hand({ done }, [])),
  unzip: async ({ zip, name }, hand) => {
    await unzip(zip, name, (file) => hand(file, [file.bytes]))
    return null
  },
  openJobFile: ({ file, name }, hand) => openFile(file, name, (part) => hand(part, [])),
  packJob: (input, hand) => packJob(input, (part) => hand(part, [])),
}

function clipOf(sound: Sound): Clip {
  return 'wav' in sound ? readWav(new Uint8Array(sound.wav), '') : sound.decoded
}

function plainSamples(sound: Sound) {
  const clip = clipOf(sound)
  return { samples: clip.channels[strongestChannel(clip)]!, sampleRateHz: clip.sampleRateHz }
}

function segmentLength(segmentS: number, sampleRateHz: number): number {
  return Math.max(2, Math.round(segmentS * sampleRateHz))
}

const post = (reply: Reply, transfer: Transferable[] = []) => self.postMessage(reply, { transfer })

async function serve({ id, name, input }: Request): Promise<void> {
  try {
    const hand = (part: unknown, transfer: Transferable[]) => post({ id, part }, transfer)
    const result = await (SERVE[name] as Serve<CallName>)(input as never, hand as never)
    post({ id, result }, buffersOf(result))
  } catch (error) {
    if (error instanceof FormatError) {
      const { file, place, mend } = error
      post({ id, wrongFile: { file, place, mend } })
    } else {
      post({ id, fault: error instanceof Error ? (error.stack ?? error.message) : String(error) })
    }
  }
}

/** Whole arrays are handed over, not copied. */
function buffersOf(result: unknown): Transferable[] {
  if (typeof result !== 'object' || result === null) return []
  return Object.values(result).flatMap((value) => (ArrayBuffer.isView(value) ? [value.buffer as ArrayBuffer] : []))
}

self.addEventListener('message', (event: MessageEvent<Request>) => void serve(event.data))
