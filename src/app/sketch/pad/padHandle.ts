import type { SketchPlace } from '../../../../shared/line/line'
import type { Spot } from '../../../../shared/sketch/arrangeSketch'

/** Something on the pad that can be chosen, and most of it moved: by finger, mouse and keyboard. */
export interface PadHandle {
  readonly id: string
  readonly at: SketchPlace
  /** What it is and where, for who does not see it. */
  readonly label: string
  /** `peg` is drawn by the picture; a `ring` goes round something that is drawn already. */
  readonly shape: 'corner' | 'ring' | 'bar' | 'peg' | 'cross'
  readonly canMove: boolean
}

/** A handle as it stands on the screen just now. */
export interface SpottedHandle {
  readonly handle: PadHandle
  /** Where it may be grabbed; the first is its place, others are parts of it that stand elsewhere, as a peg's square. */
  readonly grips: readonly Spot[]
}

/** Half of 48 px: a thumb that comes nearer than this means the handle, a little more where nothing else is near. */
export const GRIP_PX = 28

/** The handle under a thumb, the chosen one before others that are as near. */
export function handleAt(handles: readonly SpottedHandle[], spot: Spot, chosenId: string | null): PadHandle | null {
  let nearest: PadHandle | null = null
  let nearestPx = GRIP_PX
  for (const { handle, grips } of handles) {
    const awayPx = Math.min(...grips.map(({ x, y }) => Math.hypot(x - spot.x, y - spot.y)))
    const countedPx = handle.id === chosenId ? awayPx - 8 : awayPx
    if (countedPx < nearestPx) {
      nearest = handle
      nearestPx = countedPx
    }
  }
  return nearest
}
