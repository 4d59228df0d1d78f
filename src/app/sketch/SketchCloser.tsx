import { useSay } from '../frame/useSay'
import { arranged } from './arranged'
import type { DrawSketch } from './drawSketch'
import { PegShape } from './PegShape'
import { ScaleBar } from './ScaleBar'
import { SketchPicture } from './SketchPicture'
import { closeView, STRIP_PX, toSpot } from './sketchView'

const HEIGHT_PX = 200

export interface SketchCloserProps {
  readonly draw: DrawSketch
  /** Points next to the place. */
  readonly points: readonly number[]
  readonly widthPx: number
}

/** The place to dig and what is next to it, large enough to be read at arm's length. The sketch above has the words. */
export function SketchCloser({ draw, points, widthPx }: SketchCloserProps) {
  const { say, units } = useSay()
  const size = { widthPx, heightPx: HEIGHT_PX }
  const view = closeView(draw(Number.POSITIVE_INFINITY), points, size)
  if (view === null) return null
  const commands = draw(view.pxPerM)
  const placed = arranged(commands, view, size, units)
  return (
    <figure className="sketch-closer">
      <figcaption>{say('label_sketch_closer')}</figcaption>
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
    </figure>
  )
}
