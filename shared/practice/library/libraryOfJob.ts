import type { Job, JobClip, JobLine } from '../../job/job'
import { depthAt } from '../../line/depthAt'
import { stretchAt } from '../../line/stretchAt'
import type { ClipLabel, LibraryClip } from './libraryClip'

/** A clip of a job with its sound, and the clip with the air off of the same point. */
export interface JobLibraryClip extends LibraryClip {
  readonly sha256: string
  readonly withoutSha256: string | null
}

/** Within this of the found leak, depths, a clip with the air on is labelled `leak`. Chosen: about where it is heard well. */
const HEARD_WITHIN_DEPTHS = 1.5

/**
 * The clips of a job that teach something: only where the ground was opened, or the damage seen, is it known what a clip
 * holds. A line that says of itself that it is invented, as that of the demo does, has invented clips. Air on near the leak is `leak`, air off is `no leak`; air on further away may hold a trace of it, and is left out.
 */
export function libraryOfJob(job: Job): JobLibraryClip[] {
  return job.lines.flatMap((line) => {
    const leaks = (line.found ?? []).flatMap(({ way, alongM }) => (way === 'by ear' || alongM === null ? [] : [alongM]))
    if (leaks.length === 0) return []
    const clips = line.sweeps.flatMap((sweep) => sweep.clips)
    return clips.flatMap((clip) => labelled(job, line, { clip, clips, leaks }))
  })
}

interface ClipAtLeaks {
  readonly clip: JobClip
  readonly clips: readonly JobClip[]
  readonly leaks: readonly number[]
}

function labelled(job: Job, { line }: JobLine, { clip, clips, leaks }: ClipAtLeaks): JobLibraryClip[] {
  const { row, sound, problems, recording } = clip
  if (sound === null || problems.some(({ severity }) => severity === 'spoilt')) return []
  const leakAtM = leaks.reduce((a, b) => (Math.abs(b - row.alongM) < Math.abs(a - row.alongM) ? b : a))
  const stretch = stretchAt(line, row.alongM)
  const { depthM } = depthAt(line, row.alongM)
  const label = labelOf(row.air, Math.abs(leakAtM - row.alongM), depthM)
  if (label === null) return []
  const isInvented = line.unknown.invented === true
  const off = clips.find((other) => other.row.point === row.point && other.row.air === 'off')
  return [
    {
      file: row.file,
      label,
      source: job.name,
      consent: isInvented ? 'invented' : 'not told',
      licence: '',
      invented: isInvented,
      job: job.name,
      alongM: row.alongM,
      leakAtM,
      cover: stretch?.cover ?? '',
      device: recording?.device ?? '',
      sha256: sound.sha256,
      withoutSha256: row.air === 'on' ? (off?.sound?.sha256 ?? null) : null,
    },
  ]
}

function labelOf(air: 'on' | 'off', awayM: number, depthM: number): ClipLabel | null {
  if (air === 'off') return 'no leak'
  return awayM <= HEARD_WITHIN_DEPTHS * depthM ? 'leak' : null
}
