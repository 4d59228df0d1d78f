export const SIGN_KINDS = ['wet patch', 'sunk paver', 'bubbles', 'bare ear', 'other'] as const

/**
 * What kind of sign it is: soaked ground, a paver that sank, bubbles where the line ends in the basin, bubbling heard by
 * the bare ear, or what its note says.
 */
export type SignKind = (typeof SIGN_KINDS)[number]

/**
 * Something seen or heard without electronics, pinned to its place. It stands beside the answer and is never part of
 * what the answer is worked out from: water comes up where the ground lets it, not always at the hole.
 */
export interface Sign {
  readonly id: string
  readonly kind: SignKind
  /** Along the line, m; may lie past an end. */
  readonly alongM: number
  /** Off the line, positive to the left looking from start to end, m. */
  readonly offsetM: number
  /** What somebody wrote of it; may be empty. */
  readonly note: string
}

export const MOST_SIGNS = 1000
export const MOST_SIGN_NOTE = 2000
