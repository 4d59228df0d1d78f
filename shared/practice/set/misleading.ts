import { type ShareInterval, wilsonInterval } from '../score/wilsonInterval'
import type { PracticeSet } from './practiceSet'
import type { SetScores } from './scoresFile'

/** How often a clip of a set misled. */
export interface MisleadingClip {
  /** Its number from 0 on. */
  readonly clip: number
  readonly answers: number
  readonly wrong: number
  readonly wrongShare: ShareInterval & { readonly share: number }
  /** What it was taken for most often; `null` when nobody erred. */
  readonly takenFor: string | null
}

/**
 * The clips of a set that somebody answered, those first that mislead most surely: by the lower end of the interval, so
 * that one slip does not stand before ten.
 */
export function misleading(set: PracticeSet, scores: readonly SetScores[]): MisleadingClip[] {
  const mine = scores.filter(({ setId }) => setId === set.id).flatMap(({ answers }) => answers)
  const rows = set.clips.flatMap(({ label }, clip): MisleadingClip[] => {
    const said = mine.filter((answer) => answer.clip === clip).map((answer) => answer.said)
    if (said.length === 0) return []
    const wrong = said.filter((each) => each !== label)
    const wrongShare = { share: wrong.length / said.length, ...wilsonInterval(wrong.length, said.length) }
    return [{ clip, answers: said.length, wrong: wrong.length, wrongShare, takenFor: mostOften(wrong) }]
  })
  return rows.sort((a, b) => b.wrongShare.low - a.wrongShare.low || b.wrong - a.wrong || a.clip - b.clip)
}

function mostOften(words: readonly string[]): string | null {
  const count = (word: string) => words.filter((each) => each === word).length
  return words.reduce<string | null>((best, each) => (best === null || count(each) > count(best) ? each : best), null)
}
