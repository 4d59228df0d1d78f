import { type PointerEvent, type RefObject, useEffect, useRef } from 'react'
import type { Spot } from '../../../shared/sketch/arrangeSketch'
import { apart, middle, spotIn } from './spots'
import { useWheelZoom } from './useWheelZoom'

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
  useWheelZoom(frame, gestures.onZoom)

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
