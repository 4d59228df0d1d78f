import type { PassBand } from '../../../shared/listen/passBand'

/** What fingers and mouse do on a spectrum. */
export interface SpectrumGestures {
  readonly hzAt: (clientX: number) => number
  readonly clientXOf: (hz: number) => number
  readonly band: () => PassBand | null
  /** A tap. */
  readonly onRead: (hz: number) => void
  /** A drag across, or of one edge. */
  readonly onBand: (aHz: number, bHz: number) => void
  /** Two fingers, or the wheel with the control key, as a touch pad sends a pinch. */
  readonly onZoom: (factor: number, aboutHz: number) => void
}

/** Less than this is a tap, CSS pixels. */
const TAP_PX = 8

/** An edge can be taken hold of from this far, CSS pixels. */
const EDGE_PX = 24

/** @returns Takes the listeners away again. */
export function spectrumPointers(target: HTMLElement, gestures: SpectrumGestures): () => void {
  const fingers = new Map<number, number>()
  /** Where the drag began, and the frequency that stays while the other end moves. */
  let drag: { readonly fromX: number; readonly fixedHz: number; moved: boolean } | null = null

  const down = (event: PointerEvent) => {
    if (event.button !== 0) return
    fingers.set(event.pointerId, event.clientX)
    target.setPointerCapture(event.pointerId)
    drag =
      fingers.size === 1 ? { fromX: event.clientX, fixedHz: fixedEnd(event.clientX, gestures), moved: false } : null
  }
  const move = (event: PointerEvent) => {
    const before = spread(fingers)
    if (!fingers.has(event.pointerId)) return
    fingers.set(event.pointerId, event.clientX)
    const after = spread(fingers)
    if (before !== null && after !== null) {
      gestures.onZoom(after.width / before.width, gestures.hzAt(after.middleX))
    } else if (drag !== null) {
      drag.moved ||= Math.abs(event.clientX - drag.fromX) > TAP_PX
      if (drag.moved) gestures.onBand(drag.fixedHz, gestures.hzAt(event.clientX))
    }
  }
  const up = (event: PointerEvent) => {
    if (!fingers.delete(event.pointerId)) return
    if (drag !== null && !drag.moved && event.type === 'pointerup') gestures.onRead(gestures.hzAt(event.clientX))
    drag = null
  }
  const wheel = (event: WheelEvent) => {
    if (!event.ctrlKey && !event.metaKey) return
    event.preventDefault()
    gestures.onZoom(Math.exp(-event.deltaY / 200), gestures.hzAt(event.clientX))
  }
  target.addEventListener('pointerdown', down)
  target.addEventListener('pointermove', move)
  target.addEventListener('pointerup', up)
  target.addEventListener('pointercancel', up)
  target.addEventListener('wheel', wheel, { passive: false })
  return () => {
    target.removeEventListener('pointerdown', down)
    target.removeEventListener('pointermove', move)
    target.removeEventListener('pointerup', up)
    target.removeEventListener('pointercancel', up)
    target.removeEventListener('wheel', wheel)
  }
}

/** Beside an edge the other edge stays; elsewhere a new band begins. */
function fixedEnd(clientX: number, { band, clientXOf, hzAt }: SpectrumGestures): number {
  const present = band()
  if (present === null) return hzAt(clientX)
  const toLow = Math.abs(clientXOf(present.lowHz) - clientX)
  const toHigh = Math.abs(clientXOf(present.highHz) - clientX)
  if (Math.min(toLow, toHigh) > EDGE_PX) return hzAt(clientX)
  return toLow < toHigh ? present.highHz : present.lowHz
}

function spread(fingers: ReadonlyMap<number, number>): { readonly width: number; readonly middleX: number } | null {
  const [a, b] = [...fingers.values()]
  if (a === undefined || b === undefined || fingers.size !== 2) return null
  return { width: Math.max(20, Math.abs(a - b)), middleX: (a + b) / 2 }
}
