import { DEMO_LEAK_M, DEMO_SEED, demoYard } from './demoJob'
import type { Yard } from './yard'
import { HEARD_DB, type NamedFile, renderYard, textFile } from './yardFiles'

/** Every file of the invented job's folder, the clips last and each made when it is asked for. */
export function* demoFiles(): Generator<NamedFile> {
  const yard = demoYard()
  yield textFile('README.md', readme(yard))
  yield* renderYard(yard, DEMO_SEED)
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
