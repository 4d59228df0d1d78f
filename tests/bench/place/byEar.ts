/** How loud a place is. */
export interface HeardPlace {
  readonly alongM: number
  readonly levelDb: number
}

/** The loudest place, the first of equals; `null` without any. */
export function loudestM(places: readonly HeardPlace[]): number | null {
  return places.length === 0 ? null : places.reduce((a, b) => (b.levelDb > a.levelDb ? b : a)).alongM
}

/**
 * Top of the parabola through the loudest place and its two neighbours, held between them; the loudest place itself
 * where it has no neighbour on one side or no top comes out.
 */
export function parabolaM(places: readonly HeardPlace[]): number | null {
  const top = loudestM(places)
  const inOrder = [...places].sort((a, b) => a.alongM - b.alongM)
  const at = inOrder.findIndex((place) => place.alongM === top)
  const left = inOrder[at - 1]
  const middle = inOrder[at]
  const right = inOrder[at + 1]
  if (!left || !middle || !right) return top
  const rise = (middle.levelDb - left.levelDb) / (middle.alongM - left.alongM)
  const fall = (right.levelDb - middle.levelDb) / (right.alongM - middle.alongM)
  const curve = (fall - rise) / (right.alongM - left.alongM)
  if (!(curve < 0)) return top
  const summitM = (left.alongM + middle.alongM) / 2 - rise / (2 * curve)
  return Math.min(right.alongM, Math.max(left.alongM, summitM))
}
