import type { Job, KeptSound } from './job'
import { jobJson } from './jobJson'

/** What lies beside a job: bytes by their digests. */
export interface JobDigests {
  /** Of clips, also of those that were taken out; in the order of the job. */
  readonly sounds: readonly KeptSound[]
  /** Everything else a part names by digest: photos. */
  readonly photos: readonly string[]
}

/** Every digest a job names, each once. */
export function digestsOf(job: Job): JobDigests {
  const sounds = new Map<string, KeptSound>()
  for (const line of job.lines) {
    const clips = [...line.sweeps.flatMap((sweep) => sweep.clips), ...(line.removedClips ?? [])]
    for (const { sound } of clips) if (sound !== null && !sounds.has(sound.sha256)) sounds.set(sound.sha256, sound)
  }
  const all = new Set<string>()
  collect(jobJson(job), all)
  return { sounds: [...sounds.values()], photos: [...all].filter((sha256) => !sounds.has(sha256)) }
}

function collect(value: unknown, into: Set<string>): void {
  if (typeof value !== 'object' || value === null) return
  for (const [key, part] of Object.entries(value)) {
    if (key === 'sha256' && typeof part === 'string') into.add(part)
    else collect(part, into)
  }
}
