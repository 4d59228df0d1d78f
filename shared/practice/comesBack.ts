/** What was missed comes back after so many other questions; each time it is right, later; after the last, no more. Chosen. */
export const COMES_BACK_AFTER = [2, 6, 15] as const

/** Something that was missed, and when it comes back. */
export interface Waiting {
  /** Count of answers from which on it is due. */
  readonly dueAt: number
  /** How often it was right since it was missed. */
  readonly step: number
}

/**
 * What was missed and waits to come back, in the order in which it was last asked.
 *
 * @param told Everything asked so far, in order of time, by what tells one question from another.
 */
export function waitingToComeBack(
  told: readonly { readonly key: string; readonly right: boolean }[],
): Map<string, Waiting> {
  const list = new Map<string, Waiting>()
  for (const [i, { key, right }] of told.entries()) {
    const before = list.get(key)
    list.delete(key)
    const step = !right ? 0 : before === undefined ? null : before.step + 1
    if (step === null || step >= COMES_BACK_AFTER.length) continue
    list.set(key, { step, dueAt: i + 1 + COMES_BACK_AFTER[step]! })
  }
  return list
}
