import type { HeardClip } from '../../../../shared/evidence/heardClip'
import type { JobLine } from '../../../../shared/job/job'
import type { Sounding } from '../../../../shared/locate/answer'

/** Every clip of a line with what was heard in it; what was not listened to yet has no evidence. */
export function soundingsOf({ sweeps }: JobLine, heard: Readonly<Record<string, HeardClip>>): Sounding[] {
  return sweeps.flatMap((sweep) =>
    sweep.clips.map(({ row, sound, problems }) => {
      const said = sound === null ? undefined : heard[sound.sha256]
      return { row, evidence: said?.evidence ?? null, problems: [...problems, ...(said?.problems ?? [])] }
    }),
  )
}

/** Digests of the sounds of a line, each once. */
export function digestsOf({ sweeps }: JobLine): string[] {
  return [...new Set(sweeps.flatMap((sweep) => sweep.clips.flatMap(({ sound }) => sound?.sha256 ?? [])))]
}
