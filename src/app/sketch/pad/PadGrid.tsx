import { useId } from 'react'
import { gridStepM } from '../../../../shared/sketch/gridStepM'
import { useSay } from '../../frame/useSay'
import { type SketchView, toSpot, type ViewSize } from '../sketchView'

/** A blank sheet, ruled in the reader's unit; every fifth line is stronger. */
export function PadGrid({ view, size }: { readonly view: SketchView; readonly size: ViewSize }) {
  const { units } = useSay()
  const id = useId()
  const stepPx = gridStepM(view.pxPerM, units.length) * view.pxPerM
  const origin = toSpot(view, size, { xM: 0, yM: 0 })
  const lines = (everyPx: number) => ({
    x: origin.x % everyPx,
    y: origin.y % everyPx,
    width: everyPx,
    height: everyPx,
    patternUnits: 'userSpaceOnUse' as const,
  })
  return (
    <>
      <defs>
        <pattern id={`${id}-fine`} {...lines(stepPx)}>
          <path className="sketchpad-grid" d={`M0 0H${stepPx}M0 0V${stepPx}`} />
        </pattern>
        <pattern id={`${id}-strong`} {...lines(5 * stepPx)}>
          <path className="sketchpad-grid sketchpad-grid-strong" d={`M0 0H${5 * stepPx}M0 0V${5 * stepPx}`} />
        </pattern>
      </defs>
      <rect width="100%" height="100%" fill={`url(#${id}-fine)`} />
      <rect width="100%" height="100%" fill={`url(#${id}-strong)`} />
    </>
  )
}
