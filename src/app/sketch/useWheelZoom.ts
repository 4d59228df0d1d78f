import { type RefObject, useEffect, useRef } from 'react'
import type { Spot } from '../../../shared/sketch/arrangeSketch'
import { spotIn } from './spots'

/** The wheel zooms a picture with Ctrl, or once the picture has the focus; otherwise the page moves, as ever. */
export function useWheelZoom(
  frame: RefObject<SVGSVGElement | null>,
  onZoom: (factor: number, about: Spot) => void,
): void {
  const latest = useRef(onZoom)
  useEffect(() => {
    latest.current = onZoom
  })
  useEffect(() => {
    const svg = frame.current
    if (svg === null) return
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey && !svg.contains(document.activeElement)) return
      event.preventDefault()
      latest.current(Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0025)), spotIn(svg, event))
    }
    svg.addEventListener('wheel', onWheel, { passive: false })
    return () => svg.removeEventListener('wheel', onWheel)
  }, [frame])
}
