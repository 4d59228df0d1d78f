/** Where two trees of JSON differ: numbers by more than `most`, relative to 1 or their size. */
export function differencesOf(a: unknown, b: unknown, most: number, place = ''): string[] {
  if (typeof a === 'number' && typeof b === 'number') {
    return Math.abs(a - b) <= most * Math.max(1, Math.abs(a)) ? [] : [`${place}: ${a} and ${b}`]
  }
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) {
    return Object.is(a, b) ? [] : [`${place}: ${JSON.stringify(a)} and ${JSON.stringify(b)}`]
  }
  const keys = new Set([...Object.keys(a), ...Object.keys(b)])
  return [...keys].flatMap((key) =>
    differencesOf((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], most, `${place}.${key}`),
  )
}
