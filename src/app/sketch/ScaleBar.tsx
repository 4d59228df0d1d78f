import { scaleBarM } from '../../../shared/sketch/scaleBarM'
import { formatQuantity } from '../../../shared/words/formatQuantity'
import { useSay } from '../frame/useSay'
import { STRIP_PX, type ViewSize } from './sketchView'

/** A round length at the foot of the picture, at the scale it has just now. */
export function ScaleBar({ pxPerM, size }: { readonly pxPerM: number; readonly size: ViewSize }) {
  const { units } = useSay()
  const lengthM = scaleBarM(Math.min(120, size.widthPx / 3) / pxPerM, units.length)
  const words = units.length === 'ft' ? formatQuantity('m', lengthM, units) : `${Number(lengthM.toPrecision(6))} m`
  const x = 14
  const y = size.heightPx + STRIP_PX - 10
  const endX = x + lengthM * pxPerM
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus
    <g aria-hidden="true" className="sketch-scale">
      <path d={`M${x} ${y - 6}V${y}H${endX}V${y - 6}`} />
      <text x={endX + 8} y={y} dy="0.1em">
        {words}
      </text>
    </g>
  )
}
