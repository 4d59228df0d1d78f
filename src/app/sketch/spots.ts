import type { Spot } from '../../../shared/sketch/arrangeSketch'

/** Where a pointer is in a picture, px from its corner. */
export function spotIn(svg: SVGSVGElement, event: { readonly clientX: number; readonly clientY: number }): Spot {
  const { left, top } = svg.getBoundingClientRect()
  return { x: event.clientX - left, y: event.clientY - top }
}

/** Distance between two spots, px. */
export function apart(a: Spot, b: Spot): number {
  return Math.hypot(a.x - b.x, a.y - b.y)
}

export function middle(a: Spot, b: Spot): Spot {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }
}
