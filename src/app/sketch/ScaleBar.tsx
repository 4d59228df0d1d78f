import { METRES_PER_FOOT } from '../../../shared/base/units'
import { scaleBarM } from '../../../shared/sketch/scaleBarM'
import { useSay } from '../frame/useSay'
import { STRIP_PX, type ViewSize } from './sketchView'

/** A round length at the foot of the picture, at the scale it has just now. */
export function ScaleBar({ pxPerM, size }: { readonly pxPerM: number; readonly size: ViewSize }) {
  const { units } = useSay()
  const lengthM = scaleBarM(Math.min(120, size.widthPx / 3) / pxPerM, units.length)
  const count = Number((lengthM / (units.length === 'ft' ? METRES_PER_FOOT : 1)).toPrecision(6))
  const x = 14
  const y = size.heightPx + STRIP_PX - 10
  const endX = x + lengthM * pxPerM
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus
    <g aria-hidden="true" className="sketch-scale">
      <path d={`M${x} ${y - 6}V${y}H${endX}V${y - 6}`} />
      <text x={endX + 8} y={y} dy="0.1em">
        {`${count} ${units.length}`}
      </text>
    </g>
  )
}
