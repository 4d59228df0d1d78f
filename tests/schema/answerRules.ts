import type { AnswerJson } from '../../shared/answer/answerJson'

/**
 * The rules of an answer that its schema cannot say.
 *
 * @returns Those that are broken, in words; none for a right answer.
 */
export function brokenRules(answer: AnswerJson): string[] {
  return RULES.filter(([, holds]) => !holds(answer)).map(([rule]) => rule)
}

const isFalling = (values: readonly number[]) => values.every((value, i) => i === 0 || value <= values[i - 1]!)
const isRising = (values: readonly number[]) => values.every((value, i) => i === 0 || value > values[i - 1]!)

const RULES: readonly (readonly [string, (answer: AnswerJson) => boolean])[] = [
  ['a window has its ends in order', ({ sources }) => sources.every(({ window_m: [low, high] }) => low <= high)],
  [
    'a source lies in its own window, which holds more than half of its density',
    ({ sources }) =>
      sources.every(
        ({ along_m, window_m: [low, high], window_probability }) =>
          window_probability <= 0.5 || (low <= along_m && along_m <= high),
      ),
  ],
  ['sources come by falling probability', ({ sources }) => isFalling(sources.map(({ probability }) => probability))],
  [
    'ranks are 1, 2, 3 ... without a gap',
    ({ points }) => {
      const ranks = points.map(({ rank }) => rank).sort((a, b) => a - b)
      return ranks.every((rank, i) => rank === i + 1)
    },
  ],
  [
    'points are ranked by falling probability of being nearest, ties by number',
    ({ points }) => {
      const byRank = [...points].sort((a, b) => a.rank - b.rank)
      return byRank.every((point, i) => {
        const before = byRank[i - 1]
        const probability = point.nearest_probability
        return (
          !before ||
          before.nearest_probability > probability ||
          (before.nearest_probability === probability && before.point <= point.point)
        )
      })
    },
  ],
  [
    'the leak is nearest to at most one point',
    ({ points }) => points.reduce((sum, point) => sum + point.nearest_probability, 0) <= 1 + 1e-9,
  ],
  [
    'a density has as many values as places, and places in rising order',
    ({ density }) => density.along_m.length === density.per_m.length && isRising(density.along_m),
  ],
  [
    'the density adds up to the expected number of sources',
    ({ density: { along_m, per_m }, sources }) => {
      let area = 0
      for (let i = 1; i < along_m.length; i++) {
        area += ((per_m[i]! + per_m[i - 1]!) / 2) * (along_m[i]! - along_m[i - 1]!)
      }
      const expected = sources.reduce((sum, { probability }) => sum + probability, 0)
      return Math.abs(area - expected) <= 0.01
    },
  ],
  ['a piece to dig has its ends in order', ({ dig_first }) => dig_first.every(({ from_m, to_m }) => from_m <= to_m)],
  [
    'where to listen next comes best first',
    ({ listen_next }) => isFalling(listen_next.map(({ expected_window_m }) => -expected_window_m)),
  ],
]
