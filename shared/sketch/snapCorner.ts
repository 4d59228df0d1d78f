import type { SketchPlace } from '../line/line'

export interface SnapOf {
  /** Where the finger is. */
  readonly place: SketchPlace
  /** Corners before it, nearest first: one leg, or none for the first leg of a line. */
  readonly before: readonly SketchPlace[]
  /** Corners after it, nearest first; none for the last one. */
  readonly after: readonly SketchPlace[]
  /** Turns that are snapped to, degrees, to either side, besides straight on; 90 for right angles. */
  readonly turnsDeg: readonly number[]
  /** A first leg, which turns from nothing, snaps to the paper's own directions. */
  readonly axes: boolean
  /** How far a place is drawn to what it snaps to, m. */
  readonly reachM: number
  /** Lengths are rounded to it, > 0, m. */
  readonly stepM: number
}

export interface Snapped {
  readonly place: SketchPlace
  /** Of the corner before, of the one after: that the leg there runs in a snapped direction. */
  readonly before: boolean
  readonly after: boolean
}

/**
 * A corner drawn to where its legs meet their neighbours at a right angle, or another one that was told; and to a round
 * length. What is out of reach is left where the finger is, but for the rounding of the leg before it.
 */
export function snapCorner(of: SnapOf): Snapped {
  const { place, before, after, reachM, stepM } = of
  const one = nearestRay(raysFrom(before, of), place, reachM)
  const other = nearestRay(raysFrom(after, of), place, reachM)
  if (one && other) {
    const cross = crossing(one, other)
    if (cross && apart(cross, place) <= 2 * reachM) return { place: cross, before: true, after: true }
  }
  if (one && !(other && other.awayM < one.awayM)) return { place: atStep(one, stepM), before: true, after: false }
  if (other) return { place: atStep(other, stepM), before: false, after: true }
  const [pivot] = before.length > 0 ? before : after
  return { place: pivot === undefined ? place : roundedFrom(pivot, place, stepM), before: false, after: false }
}

interface Ray {
  readonly from: SketchPlace
  /** Unit vector. */
  readonly x: number
  readonly y: number
}

interface NearRay extends Ray {
  /** Of the place that is nearest to the finger: how far along the ray, and how far off the finger. */
  readonly pastM: number
  readonly awayM: number
}

function raysFrom([pivot, beyond]: readonly SketchPlace[], { turnsDeg, axes }: SnapOf): Ray[] {
  if (pivot === undefined) return []
  if (beyond === undefined) return axes ? [0, 90, 180, -90].map((deg) => rayOf(pivot, (deg * Math.PI) / 180)) : []
  const heading = Math.atan2(pivot.yM - beyond.yM, pivot.xM - beyond.xM)
  const turns = new Set([0, ...turnsDeg.flatMap((deg) => [deg, -deg])])
  return [...turns].map((deg) => rayOf(pivot, heading + (deg * Math.PI) / 180))
}

function rayOf(from: SketchPlace, heading: number): Ray {
  return { from, x: Math.cos(heading), y: Math.sin(heading) }
}

function nearestRay(rays: readonly Ray[], { xM, yM }: SketchPlace, reachM: number): NearRay | null {
  let nearest: NearRay | null = null
  for (const ray of rays) {
    const [dx, dy] = [xM - ray.from.xM, yM - ray.from.yM]
    const pastM = dx * ray.x + dy * ray.y
    const awayM = Math.abs(dx * ray.y - dy * ray.x)
    if (pastM > 0 && awayM <= reachM && (nearest === null || awayM < nearest.awayM)) {
      nearest = { ...ray, pastM, awayM }
    }
  }
  return nearest
}

function atStep({ from, x, y, pastM }: NearRay, stepM: number): SketchPlace {
  const lengthM = roundedM(pastM, stepM)
  return { xM: from.xM + lengthM * x, yM: from.yM + lengthM * y }
}

function roundedFrom(pivot: SketchPlace, place: SketchPlace, stepM: number): SketchPlace {
  const lengthM = apart(pivot, place)
  if (lengthM === 0) return place
  const share = roundedM(lengthM, stepM) / lengthM
  return { xM: pivot.xM + (place.xM - pivot.xM) * share, yM: pivot.yM + (place.yM - pivot.yM) * share }
}

/** Never 0: a leg has a length. */
function roundedM(lengthM: number, stepM: number): number {
  return Math.max(1, Math.round(lengthM / stepM)) * stepM
}

/** Where two rays meet, before both of their beginnings; `null` where they do not, or hardly. */
function crossing(a: Ray, b: Ray): SketchPlace | null {
  const across = a.x * b.y - a.y * b.x
  if (Math.abs(across) < 1e-3) return null
  const [dx, dy] = [b.from.xM - a.from.xM, b.from.yM - a.from.yM]
  const pastM = (dx * b.y - dy * b.x) / across
  const otherM = (dx * a.y - dy * a.x) / across
  return pastM > 1e-9 && otherM > 1e-9 ? { xM: a.from.xM + pastM * a.x, yM: a.from.yM + pastM * a.y } : null
}

function apart(a: SketchPlace, b: SketchPlace): number {
  return Math.hypot(a.xM - b.xM, a.yM - b.yM)
}
