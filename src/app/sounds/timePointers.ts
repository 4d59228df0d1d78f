import type { PointerEvent as ReactPointerEvent } from 'react'

interface TimeGestures {
  readonly durationS: number
  readonly onSeek: (atS: number) => void
  readonly onLoop: (aS: number, bS: number) => void
}

/** Less than this is a tap, CSS pixels. */
const TAP_PX = 8

type Handlers = Record<
  'onPointerDown' | 'onPointerMove' | 'onPointerUp' | 'onPointerCancel',
  (event: ReactPointerEvent<HTMLElement>) => void
>

/** What fingers and mouse do on the picture (go there) and along its seconds (loop a stretch). */
export function timePointers({ durationS, onSeek, onLoop }: TimeGestures): {
  readonly place: Handlers
  readonly seconds: Handlers
} {
  const timeAt = (event: ReactPointerEvent<HTMLElement>) => {
    const { left, width } = event.currentTarget.getBoundingClientRect()
    return Math.min(1, Math.max(0, (event.clientX - left) / width)) * durationS
  }
  const handlers = (onDrag: (fromS: number, toS: number) => void): Handlers => {
    let from: { readonly x: number; readonly atS: number; moved: boolean } | null = null
    return {
      onPointerDown: (event) => {
        if (event.button !== 0) return
        event.currentTarget.setPointerCapture(event.pointerId)
        from = { x: event.clientX, atS: timeAt(event), moved: false }
      },
      onPointerMove: (event) => {
        if (from === null) return
        from.moved ||= Math.abs(event.clientX - from.x) > TAP_PX
        if (from.moved) onDrag(from.atS, timeAt(event))
      },
      onPointerUp: (event) => {
        if (from !== null && !from.moved) onSeek(timeAt(event))
        from = null
      },
      onPointerCancel: () => {
        from = null
      },
    }
  }
  return { place: handlers((_, toS) => onSeek(toS)), seconds: handlers(onLoop) }
}
