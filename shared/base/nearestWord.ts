/**
 * The known word somebody most likely meant.
 *
 * @param word  What was written; compared without regard to case.
 * @param known Words it may have been.
 * @returns The known word fewest edits away (Levenshtein), at most a third of its length and at least one edit; the
 *   first of equals; `null` when none is that near, or when the word is known.
 * @example nearestWord('lenght_m', ['length_m', 'depth_m']) // 'length_m'
 */
export function nearestWord(word: string, known: readonly string[]): string | null {
  if (known.includes(word) || word.length > 60) return null
  let best: string | null = null
  let bestEdits = Number.POSITIVE_INFINITY
  for (const candidate of known) {
    const edits = editDistance(word.toLowerCase(), candidate.toLowerCase())
    if (edits < bestEdits && edits <= candidate.length / 3) {
      best = candidate
      bestEdits = edits
    }
  }
  return best
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      next.push(Math.min(change, row[j]! + 1, next[j - 1]! + 1))
    }
    row = next
  }
  return row[b.length]!
}
