import { writeWav } from '../audio/writeWav'
import { writeLineJson } from '../line/writeLineJson'
import { DEMO_LEAK_M, DEMO_SEED, demoYard } from './demoJob'
import { renderClip } from './renderClip'
import { csv, sweepSheet } from './sheet'
import { overFloor } from './solveLevel'
import type { ClipPlan, Yard } from './yard'

/** A file of a folder. */
export interface NamedFile {
  readonly path: string
  readonly bytes: Uint8Array
}

/** A clip as the bytes of a WAV file, in its recorder's encoding. */
export function clipFile(yard: Yard, plan: ClipPlan): NamedFile {
  const { kind, bits } = plan.recorder.encoding
  const encoding = kind === 'float' ? 'float32' : bits === 24 ? 'pcm24' : 'pcm16'
  return { path: plan.row.file, bytes: writeWav(renderClip(yard, plan), { encoding }) }
}

/** Sheet and line of a yard as a sweep folder has them. */
export function sheetFiles(yard: Yard): NamedFile[] {
  return [
    textFile('sweep.csv', sweepSheet(yard.clips.map((plan) => plan.row))),
    textFile('line.json', writeLineJson(yard.told)),
  ]
}

/** The invented job's files besides its clips. */
export function demoSheetFiles(): NamedFile[] {
  const yard = demoYard()
  return [...sheetFiles(yard), textFile('labels.csv', labels(yard)), textFile('README.md', readme(yard))]
}

/** Signal over the floor from which a clip is labelled `leak`, dB in its best band. */
const HEARD_DB = 3

function labels(yard: Yard): string {
  const floor = yard.floorPsd.map((p, g) => p + yard.selfNoisePsd[g]!)
  const label = (plan: ClipPlan) => {
    if (plan.spoil !== null) return 'spoilt'
    if (plan.row.air === 'off') return 'no leak'
    return overFloor(yard.ground, yard.emitters[0]!, plan.spot, floor).overFloorDb >= HEARD_DB ? 'leak' : 'no leak'
  }
  const rows = yard.clips.map((plan) => [plan.row.file, label(plan), DEMO_SEED, plan.row.alongM, DEMO_LEAK_M])
  return csv([['file', 'label', 'job', 'along_m', 'leak_at_m'], ...rows])
}

function readme(yard: Yard): string {
  const spoilt = yard.clips.filter((plan) => plan.spoil !== null).map((plan) => plan.row.file)
  return `# Demo audio: an invented job

Nobody recorded any of this. \`npm run demo-audio\` makes every file here, byte for byte, from the seed
"${DEMO_SEED}" with the synthetic yard in \`shared/synth/\`.

The story: the fountain in Alder Square loses water through its return line, 2 in PVC, ${yard.told.lengthM} m in three legs
under grass, pavers and a concrete pad. Air is let in at the basin, 1.2 m before the line's start. An elbow under the
pavers is cracked, ${DEMO_LEAK_M} m along: between point 7 and point 8. A neighbour's pump hums beyond the pad.

| file | what |
|---|---|
| \`sweep.csv\` | ${new Set(yard.clips.map((plan) => plan.row.point)).size} points a metre apart, air on and off at each without lifting the microphone |
| \`line.json\` | what is told of the line |
| \`labels.csv\` | the truth: \`leak\` where the leak stands ${HEARD_DB} dB and more over the floor in its best band, \`no leak\` elsewhere, \`spoilt\` for ${spoilt.join(', ')} |
| \`NN-on.wav\`, \`NN-off.wav\` | clips of ${yard.clips[0]!.durationS} s, 16 kHz, 16 bit; 05-off is 44.1 kHz, 24 bit and 12-on 48 kHz, float |

In the clips: bubbles one by one, the hiss of the crack, the inlet's hiss, the pump's 50 Hz comb; footsteps in 03-on,
09-on and 10-off, wind in 02-on, 05-off and 13-on, birds in 06-off and 07-on, a voice in 11-on, a car in 12-off.
The nearest point stands ${yard.truth.overFloorDb[0]} dB over the ambient floor in its best one-third-octave band.
`
}

function textFile(path: string, text: string): NamedFile {
  return { path, bytes: utf8(text) }
}

/** The core has no TextEncoder; the percent signs of an escaped URI are the same bytes. */
function utf8(text: string): Uint8Array {
  const escaped = encodeURIComponent(text).replace(/%(..)/g, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  )
  return Uint8Array.from(escaped, (char) => char.charCodeAt(0))
}
