import type { ShownWindow } from '../../../shared/job/found'
import type { LocateAnswer } from '../../../shared/locate/answer'

/**
 * The window by which a finding is judged: of several sources the one that was named nearest to it, as each is another leak;
 * the first one where nothing was found.
 *
 * @returns `null` when the answer names no place.
 */
export function shownWindow(
  answer: Pick<LocateAnswer, 'sources' | 'verdict'> | null,
  alongM: number | null,
  version: string,
): ShownWindow | null {
  const sources = answer?.sources ?? []
  const away = (placeM: number) => (alongM === null ? 0 : Math.abs(placeM - alongM))
  const [nearest] = [...sources].sort((a, b) => away(a.alongM) - away(b.alongM))
  if (nearest === undefined || answer === null) return null
  const { windowM, windowProbability: probability } = nearest
  return { windowM, probability, alongM: nearest.alongM, verdict: answer.verdict, version }
}
