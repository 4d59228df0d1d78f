import type { ReactNode } from 'react'
import type { Spot } from '../../../shared/sketch/arrangeSketch'
import type { DrawMark } from '../../../shared/sketch/drawList'

/** Drawn with the line running to the right. */
const SHAPES: Readonly<Record<DrawMark['shape'], ReactNode>> = {
  start: <path className="sketch-mark-line" d="M0-9V9" />,
  end: <path className="sketch-mark-line" d="M0-9V9M-5-9V9" />,
  elbow: <circle className="sketch-mark-fill" r="4.500" />,
  tee: <path className="sketch-mark-line" d="M0 0v-10M-6-10H6" />,
  coupling: <path className="sketch-mark-line" d="M-3.500-7V7M3.500-7V7" />,
  valve: <path className="sketch-mark-open" d="M-8-6V6L8-6V6z" />,
  inlet: (
    <>
      <circle className="sketch-mark-open" r="7" />
      <path className="sketch-mark-line" d="M-3-3.500 2.500 0-3 3.500" />
    </>
  ),
  noise: (
    <>
      <circle className="sketch-mark-fill" r="3" />
      <path className="sketch-mark-line" d="M5-5.500a7.500 7.500 0 0 1 0 11M-5-5.500a7.500 7.500 0 0 0 0 11" />
    </>
  ),
  // Slanting, so that it is never taken for a piece of pipe or tape.
  source: <path className="sketch-source" d="M-10-10 10 10M-10 10 10-10" />,
  listen: <circle className="sketch-listen" r="11" />,
  fixed: <path className="sketch-mark-open" d="M-7-7H7V7H-7zM-7-7 7 7M-7 7 7-7" />,
  sign: <path className="sketch-mark-open" d="M0-8 8 0 0 8-8 0z" />,
}

export function SketchMark({ mark, spot }: { readonly mark: DrawMark; readonly spot: Spot }) {
  const turn = (-mark.turnRad * 180) / Math.PI
  return (
    <g className={`sketch-mark sketch-${mark.certainty}`} transform={`translate(${spot.x} ${spot.y}) rotate(${turn})`}>
      {SHAPES[mark.shape]}
    </g>
  )
}
