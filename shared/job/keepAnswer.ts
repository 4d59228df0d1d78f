import type { LocateAnswer, Sounding } from '../locate/answer'
import type { JobLine } from './job'
import type { KeptAnswer } from './keptAnswer'
import { pointSpectra } from './pointSpectra'

/** What is known beside the answer when it is kept. */
export interface KeepingOf {
  readonly timeS: number
  readonly version: string
  readonly soundings: readonly Sounding[]
}

/** Keeps an answer with all it came from, as plain data. */
export function keepAnswer(
  { line, sweeps }: Pick<JobLine, 'line' | 'sweeps'>,
  answer: LocateAnswer,
  { timeS, version, soundings }: KeepingOf,
): KeptAnswer {
  const { alongM, perM } = answer.density
  return {
    timeS,
    version,
    answer: { ...answer, density: { alongM: Array.from(alongM), perM: Array.from(perM) } },
    line,
    spectra: pointSpectra(soundings),
    clips: sweeps.flatMap(({ clips }) =>
      clips.map(({ row, sound }) => ({ file: row.file, sha256: sound?.sha256 ?? null })),
    ),
  }
}
