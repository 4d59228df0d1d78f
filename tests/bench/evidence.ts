import type { Clip } from '../../shared/audio/clip'
import { clipQuality } from '../../shared/audio/clipQuality'
import { readWav } from '../../shared/audio/readWav'
import { resample } from '../../shared/audio/resample'
import { writeWav } from '../../shared/audio/writeWav'
import { median } from '../../shared/base/statistics'
import { findRings } from '../../shared/bubbles/findRings'
import { clipEvidence } from '../../shared/evidence/clipEvidence'
import { bandLevels } from '../../shared/spectrum/bandLevels'
import { demoYard } from '../../shared/synth/demoJob'
import { renderClip } from '../../shared/synth/renderClip'

/**
 * Evidence of a clip as a multiple of real time on one core, whole and by part, each the median of several runs. By the time
 * the processor spent, so that what else the machine does plays little part.
 */
const RUNS = 9
const CLIPS = 6

function seconds(work: () => void): number {
  const before = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1e6
}

function demoClips(rateHz: number): Clip[] {
  const yard = demoYard()
  return yard.clips.slice(0, CLIPS).map((plan) => {
    const { channels, sampleRateHz } = renderClip(yard, plan)
    const samples = resample(channels[0]!, sampleRateHz, rateHz)
    return { channels: [samples], sampleRateHz: rateHz, encoding: { kind: 'pcm', bits: 16 }, problems: [] }
  })
}

function row(rateHz: number): string {
  const clips = demoClips(rateHz)
  const files = clips.map((clip) => writeWav(clip))
  const audioS = clips.reduce((sum, clip) => sum + clip.channels[0]!.length / rateHz, 0)
  const times = (work: (clip: Clip, file: Uint8Array) => unknown) => {
    const all = Array.from({ length: RUNS + 2 }, () =>
      seconds(() => {
        for (const [i, clip] of clips.entries()) work(clip, files[i]!)
      }),
    )
    return audioS / median(all.slice(2))
  }
  const figures = {
    'read and evidence': times((_, file) => clipEvidence(readWav(file, 'bench.wav'))),
    evidence: times((clip) => clipEvidence(clip)),
    levels: times((clip) => bandLevels(clip.channels[0]!, rateHz)),
    rings: times((clip) => findRings(clip.channels[0]!, rateHz)),
    quality: times((clip) => clipQuality(clip.channels[0]!, rateHz, clip)),
  }
  const shown = Object.entries(figures).map(([name, times]) => `${name} ${times.toFixed(0).padStart(5)} x`)
  return `${String(rateHz).padStart(6)} Hz   ${shown.join('   ')}`
}

console.log(
  `Multiple of real time on one core (budget 150 x, aim 400 x), ${CLIPS} clips of the demo, median of ${RUNS}:`,
)
for (const rateHz of [8_000, 16_000, 44_100, 48_000]) console.log(row(rateHz))
