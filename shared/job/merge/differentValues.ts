/**
 * Of values that copies tell, those that say something the others do not: nothing told (`null`, an empty text or list)
 * yields to anything, and of a log each list to a longer one that begins with it.
 *
 * Values that none of the others holds are an antichain, and taking them of a union is commutative, associative and
 * idempotent: that is what makes merging so.
 *
 * @returns JSON texts, each once, in the order of their characters; nothing told only when there is nothing else.
 */
export function differentValues(values: readonly unknown[], isLog: boolean): string[] {
  const texts = [...new Set(values.map((value) => JSON.stringify(value ?? null)))]
  const told = texts.filter((text) => !NOTHING.has(text))
  if (told.length === 0) return ['null']
  return told.filter((text) => !isLog || !told.some((other) => goesOn(text, other))).sort()
}

const NOTHING = new Set(['null', '""', '[]', '{}'])

/** True when both are lists and the longer goes on where the other ends. */
export function goesOn(text: string, longer: string): boolean {
  return text !== longer && text.startsWith('[') && longer.startsWith(`${text.slice(0, -1)},`)
}
