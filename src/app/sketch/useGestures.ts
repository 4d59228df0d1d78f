import { type PointerEvent, type RefObject, useEffect, useRef } from 'react'
import type { Spot } from '../../../shared/sketch/arrangeSketch'

export interface Gestures {
  readonly onTap: (spot: Spot) => void
  readonly onPan: (by: Spot) => void
  readonly onZoom: (factor: number, about: Spot) => void
}

/** A finger that moves less than this has tapped, px. */
const TAP_PX = 8

/** Fingers, mouse and wheel on a picture. The wheel zooms with Ctrl, or once the picture has the focus. */
export function useGestures(frame: RefObject<SVGSVGElement | null>, gestures: Gestures) {
  const fingers = useRef(new Map<number, Spot>())
  const hasMoved = useRef(false)
  const latest = useRef(gestures)
  useEffect(() => {
    latest.current = gestures
  })
  useEffect(() => {
    const svg = frame.current
    if (svg === null) return
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey && !svg.contains(document.activeElement)) return
      event.preventDefault()
      latest.current.onZoom(Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0025)), spotIn(svg, event))
    }
    svg.addEventListener('wheel', onWheel, { passive: false })
    return () => svg.removeEventListener('wheel', onWheel)
  }, [frame])

  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button !== 0) return
    if (fingers.current.size === 0) hasMoved.current = false
    fingers.current.set(event.pointerId, spotIn(event.currentTarget, event))
    if (fingers.current.size > 1) hasMoved.current = true
  }
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    const before = fingers.current.get(event.pointerId)
    if (before === undefined) return
    const now = spotIn(event.currentTarget, event)
    if (!hasMoved.current && apart(before, now) < TAP_PX) return
    if (!hasMoved.current) event.currentTarget.setPointerCapture(event.pointerId)
    hasMoved.current = true
    const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1]
    fingers.current.set(event.pointerId, now)
    if (other === undefined) return latest.current.onPan({ x: now.x - before.x, y: now.y - before.y })
    latest.current.onZoom(apart(other, now) / Math.max(apart(other, before), 1), middle(other, now))
  }
  const onPointerUp = (event: PointerEvent<SVGSVGElement>) => {
    if (!fingers.current.delete(event.pointerId)) return
    if (!hasMoved.current) latest.current.onTap(spotIn(event.currentTarget, event))
  }
  const onPointerCancel = (event: PointerEvent<SVGSVGElement>) => {
    fingers.current.delete(event.pointerId)
  }
  return { onPointerDown, onPointerMove, onPointerUp, onPointerCancel, onPointerLeave: onPointerCancel }
}

function spotIn(svg: SVGSVGElement, event: { readonly clientX: number; readonly clientY: number }): Spot {
  const { left, top } = svg.getBoundingClientRect()
  return { x: event.clientX - left, y: event.clientY - top }
}

function apart(a: Spot, b: Spot): number {
  return Math.hypot(a.x - b.x, a.y - b.y)
}

function middle(a: Spot, b: Spot): Spot {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }
}
