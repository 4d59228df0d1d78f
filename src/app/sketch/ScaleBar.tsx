import { useSay } from '../frame/useSay'
import { scaleBarAt } from './scaleBarAt'
import type { ViewSize } from './sketchView'

/** A round length at the foot of the picture, at the scale it has just now. */
export function ScaleBar({ pxPerM, size }: { readonly pxPerM: number; readonly size: ViewSize }) {
  const { units } = useSay()
  const { fromX, toX, wordsX, y, words } = scaleBarAt(pxPerM, size, units)
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus
    <g aria-hidden="true" className="sketch-scale">
      <path d={`M${fromX} ${y - 6}V${y}H${toX}V${y - 6}`} />
      <text x={wordsX} y={y} dy="0.1em">
        {words}
      </text>
    </g>
  )
}
