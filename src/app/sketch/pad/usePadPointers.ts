import { type PointerEvent, type RefObject, useEffect, useRef } from 'react'
import type { Spot } from '../../../../shared/sketch/arrangeSketch'
import { apart, middle, spotIn } from '../spots'
import { useWheelZoom } from '../useWheelZoom'

export interface PadPointers {
  /** Id of the movable handle under a finger, `null` for none. */
  readonly grab: (spot: Spot) => string | null
  readonly onTap: (spot: Spot) => void
  /** A handle pulled from one spot to another, again and again while the finger moves. */
  readonly onPull: (id: string, from: Spot, to: Spot) => void
  readonly onDrop: (id: string, from: Spot, to: Spot) => void
  /** What was pulled goes back: the finger was taken over by something else. */
  readonly onLetGo: () => void
  readonly onPan: (by: Spot) => void
  readonly onZoom: (factor: number, about: Spot) => void
}

/** A thumb that moves less than this has tapped, px. Chosen: thumbs roll more than mice. */
const TAP_PX = 10

interface Finger {
  readonly first: Spot
  readonly last: Spot
}

/** One finger draws, taps, pulls a handle or moves the sheet; two zoom; the wheel zooms with Ctrl or once the pad has the focus. */
export function usePadPointers(frame: RefObject<SVGSVGElement | null>, pointers: PadPointers) {
  const fingers = useRef(new Map<number, Finger>())
  const pulled = useRef<string | null>(null)
  const state = useRef<'still' | 'pulling' | 'moving'>('still')
  const latest = useRef(pointers)
  useEffect(() => {
    latest.current = pointers
  })
  useWheelZoom(frame, pointers.onZoom)

  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button !== 0) return
    const spot = spotIn(event.currentTarget, event)
    if (fingers.current.size === 0) {
      state.current = 'still'
      pulled.current = latest.current.grab(spot)
    } else {
      if (state.current === 'pulling') latest.current.onLetGo()
      pulled.current = null
      state.current = 'moving'
    }
    fingers.current.set(event.pointerId, { first: spot, last: spot })
    event.currentTarget.setPointerCapture(event.pointerId)
  }
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    const finger = fingers.current.get(event.pointerId)
    if (finger === undefined) return
    const now = spotIn(event.currentTarget, event)
    if (state.current === 'still' && apart(finger.first, now) < TAP_PX) return
    fingers.current.set(event.pointerId, { first: finger.first, last: now })
    if (state.current === 'still') state.current = pulled.current === null ? 'moving' : 'pulling'
    if (state.current === 'pulling') return latest.current.onPull(pulled.current!, finger.first, now)
    const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1].last
    const { last } = finger
    if (other === undefined) return latest.current.onPan({ x: now.x - last.x, y: now.y - last.y })
    latest.current.onPan({ x: (now.x - last.x) / 2, y: (now.y - last.y) / 2 })
    latest.current.onZoom(apart(other, now) / Math.max(apart(other, last), 1), middle(other, now))
  }
  const onPointerUp = (event: PointerEvent<SVGSVGElement>) => {
    const finger = fingers.current.get(event.pointerId)
    if (finger === undefined) return
    fingers.current.delete(event.pointerId)
    const now = spotIn(event.currentTarget, event)
    if (state.current === 'pulling') latest.current.onDrop(pulled.current!, finger.first, now)
    else if (state.current === 'still') latest.current.onTap(now)
    if (fingers.current.size === 0) state.current = 'still'
  }
  const onPointerCancel = (event: PointerEvent<SVGSVGElement>) => {
    if (!fingers.current.delete(event.pointerId)) return
    if (state.current === 'pulling') latest.current.onLetGo()
    pulled.current = null
    state.current = 'moving'
  }
  return { onPointerDown, onPointerMove, onPointerUp, onPointerCancel }
}
