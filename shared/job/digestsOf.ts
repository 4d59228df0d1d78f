import type { Job, KeptSound } from './job'

/** What lies beside a job: bytes by their digests. */
export interface JobDigests {
  /** Of clips, also of those that were taken out; in the order of the job. */
  readonly sounds: readonly KeptSound[]
  /** Of the site and of what was found. */
  readonly photos: readonly string[]
}

/** Every digest a job names, each once. */
export function digestsOf(job: Job): JobDigests {
  const sounds = new Map<string, KeptSound>()
  const photos = new Set<string>()
  for (const line of job.lines) {
    const clips = [...line.sweeps.flatMap((sweep) => sweep.clips), ...(line.removedClips ?? [])]
    for (const { sound } of clips) if (sound !== null && !sounds.has(sound.sha256)) sounds.set(sound.sha256, sound)
    for (const photo of [line.site?.photo, ...(line.found ?? []).map((found) => found.photo)]) {
      if (photo) photos.add(photo.sha256)
    }
  }
  return { sounds: [...sounds.values()], photos: [...photos].filter((sha256) => !sounds.has(sha256)) }
}
