import type { Found } from './found'

/** What was found, in the form of the job's file; `readFound` gives the same again. */
export function foundJson({ id, timeS, way, alongM, cause, note, photo, shown }: Found): Record<string, unknown> {
  return {
    id,
    time_s: timeS,
    way,
    along_m: alongM,
    cause,
    note,
    photo: photo && { sha256: photo.sha256, bytes: photo.bytes },
    shown: shown && {
      window_m: shown.windowM,
      probability: shown.probability,
      along_m: shown.alongM,
      verdict: shown.verdict,
      version: shown.version,
    },
  }
}
