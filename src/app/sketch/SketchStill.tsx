import { useMemo } from 'react'
import { sketchBounds } from '../../../shared/sketch/sketchBounds'
import { useSay } from '../frame/useSay'
import { arranged } from './arranged'
import type { DrawSketch } from './drawSketch'
import { PegShape } from './PegShape'
import { ScaleBar } from './ScaleBar'
import { SketchPicture } from './SketchPicture'
import './Sketch.css'
import { fitView, heightFor, STRIP_PX, toSpot } from './sketchView'
import { useWidthPx } from './useWidthPx'

/** A line from above, only to be looked at; what it shows must stand beside it in words. */
export function SketchStill({ draw }: { readonly draw: DrawSketch }) {
  const { units } = useSay()
  const { ref, widthPx } = useWidthPx()
  const bounds = useMemo(() => sketchBounds(draw(Number.POSITIVE_INFINITY)), [draw])
  const size = { widthPx, heightPx: bounds === null ? 0 : heightFor(bounds, widthPx) }
  if (bounds === null) return null
  const view = fitView(bounds, size)
  const commands = widthPx > 0 ? draw(view.pxPerM) : []
  const placed = arranged(commands, view, size, units)
  return (
    <div className="sketch sketch-closer" ref={ref}>
      {widthPx > 0 && (
        <svg
          className="sketch-paper"
          width={size.widthPx}
          height={size.heightPx + STRIP_PX}
          viewBox={`0 0 ${size.widthPx} ${size.heightPx + STRIP_PX}`}
          aria-hidden="true"
        >
          <SketchPicture commands={commands} arranged={placed} toSpot={(place) => toSpot(view, size, place)} />
          {placed.pegs.map((each) => (
            <g key={each.peg.id} className={`sketch-peg-${each.peg.state}`}>
              <PegShape arranged={each} />
            </g>
          ))}
          <ScaleBar pxPerM={view.pxPerM} size={size} />
        </svg>
      )}
    </div>
  )
}
