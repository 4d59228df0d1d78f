import { readWav } from '../../../shared/audio/readWav'
import { clipEvidence } from '../../../shared/evidence/clipEvidence'
import { locate } from '../../../shared/locate/locate'
import { drawYard } from '../../../shared/synth/drawYard'
import { familyNamed } from '../../../shared/synth/families'
import type { Yard } from '../../../shared/synth/yard'
import { clipFile } from '../../../shared/synth/yardFiles'

const POINTS = 15
const CLIP_S = 6
const RATE_HZ = 48_000

/**
 * Seconds from the bytes of a sweep of 15 points, air on and off, 6 s at 48 kHz, to the answer; from cold. The lesser of the
 * clock and the processor time: on a machine that does other work the clock runs on.
 */
export function filesToAnswerS(): number {
  const yard = usualSweep()
  const files = yard.clips.map((plan) => ({ row: plan.row, bytes: clipFile(yard, plan).bytes }))
  const started = performance.now()
  const used = process.cpuUsage()
  const soundings = files.map(({ row, bytes }) => ({
    row,
    evidence: clipEvidence(readWav(bytes, row.file)),
    problems: [],
  }))
  locate({ line: yard.told, soundings })
  const { user, system } = process.cpuUsage(used)
  return Math.min((performance.now() - started) / 1000, (user + system) / 1e6)
}

/** The first plain yard of 15 points with a pair of clips at every one, with clips of 6 s. */
function usualSweep(): Yard {
  for (let seed = 1; ; seed++) {
    const yard = drawYard(familyNamed('plain')!, `speed-${seed}`)
    const clips = yard.clips.filter(({ row }) => row.take === 1)
    if (clips.length !== 2 * POINTS || yard.truth.airOff !== 'all') continue
    return {
      ...yard,
      clips: clips.map((plan) => ({
        ...plan,
        durationS: CLIP_S,
        recorder: { ...plan.recorder, sampleRateHz: RATE_HZ },
      })),
    }
  }
}
