import { useEffect, useMemo, useRef, useState } from 'react'
import { alongPlace } from '../../../shared/line/alongPlace'
import type { LinePath } from '../../../shared/line/linePath'
import { placeAlong } from '../../../shared/line/placeAlong'
import type { Arranged, Spot } from '../../../shared/sketch/arrangeSketch'
import { sketchBounds } from '../../../shared/sketch/sketchBounds'
import { useSay } from '../frame/useSay'
import { arranged as arrangedIn } from './arranged'
import { ScaleBar } from './ScaleBar'
import './Sketch.css'
import type { DrawSketch } from './drawSketch'
import { SketchCloser } from './SketchCloser'
import { SketchPeg } from './SketchPeg'
import { SketchPicture } from './SketchPicture'
import { SketchTwin } from './SketchTwin'
import { SketchZoom } from './SketchZoom'
import { fitView, heightFor, panned, type SketchView, STRIP_PX, toPlace, toSpot, zoomed } from './sketchView'
import { textWidthPx } from './textWidthPx'
import { useGestures } from './useGestures'
import { usePegKeys } from './usePegKeys'
import { useWidthPx } from './useWidthPx'

export interface SketchProps {
  readonly draw: DrawSketch
  /** Points next to the place to dig, for the closer picture; none when there is no place. */
  readonly closePoints: readonly number[]
  readonly path: LinePath
  readonly chosenPoint: number | null
  readonly onChoose: (point: number) => void
}

/** A tap nearer to a peg than this is meant for it: the touch target of 48 px, also where pegs stand closer. */
const TOUCH_PX = 30
const ZOOM_STEP = 1.7

/** A line from above: to be looked at closer, read off and chosen from, by finger, mouse and keyboard. */
export function Sketch({ draw, closePoints, path, chosenPoint, onChoose }: SketchProps) {
  const { say, units } = useSay()
  const frame = useRef<SVGSVGElement>(null)
  const { ref, widthPx } = useWidthPx()
  const [looked, setLooked] = useState<SketchView | null>(null)
  const [readAlongM, setReadAlongM] = useState<number | null>(null)
  const bounds = useMemo(() => sketchBounds(draw(Number.POSITIVE_INFINITY)), [draw])
  const size = { widthPx, heightPx: bounds === null ? 0 : heightFor(bounds, widthPx) }
  const fit = bounds === null ? null : fitView(bounds, size)
  const view = looked ?? fit ?? { centreXM: 0, centreYM: 0, pxPerM: 1 }
  const commands = useMemo(() => draw(view.pxPerM), [draw, view.pxPerM])
  const spotOf = (place: { readonly xM: number; readonly yM: number }) => toSpot(view, size, place)
  const arranged = arrangedIn(commands, view, size, units)
  const keys = usePegKeys({ frame, pegs: arranged.pegs.map(({ peg }) => peg), chosenPoint, onChoose })
  const look = (next: SketchView) => setLooked(next === fit ? null : next)
  const gestures = useGestures(frame, {
    onTap: (spot) => {
      const peg = tappedPeg(arranged, spot, toSpotOfLine(path, spot, view, size, spotOf))
      if (peg !== null) {
        setReadAlongM(null)
        return onChoose(peg)
      }
      const { alongM } = alongPlace(path, toPlace(view, size, spot))
      setReadAlongM(alongM)
    },
    onPan: (by) => fit !== null && looked !== null && setLooked(panned(looked, fit, size, by)),
    onZoom: (factor, about) => fit !== null && look(zoomed(view, fit, size, factor, about)),
  })
  useEffect(() => setLooked((before) => (widthPx > 0 ? before : null)), [widthPx])
  if (fit === null) return null
  const middle = { x: size.widthPx / 2, y: size.heightPx / 2 }
  const source = commands.find((command) => command.kind === 'mark' && command.shape === 'source')
  const aim = looked === null && source?.kind === 'mark' ? spotOf(source.at) : middle
  const reading = readAlongM === null ? null : say('label_sketch_reading', { along_m: readAlongM })
  return (
    <div className="sketch" ref={ref}>
      {widthPx > 0 && (
        // biome-ignore lint/a11y/useSemanticElements: a drawing with buttons in it is a group, not a field set
        <svg
          ref={frame}
          className="sketch-paper"
          data-zoomed={looked !== null}
          role="group"
          aria-label={say('label_sketch')}
          width={size.widthPx}
          height={size.heightPx + STRIP_PX}
          viewBox={`0 0 ${size.widthPx} ${size.heightPx + STRIP_PX}`}
          {...gestures}
        >
          <SketchPicture commands={commands} arranged={arranged} toSpot={spotOf} />
          {arranged.pegs.map((each) => (
            <SketchPeg
              key={each.peg.id}
              arranged={each}
              isStop={each.peg.point === keys.stop}
              hasFocus={each.peg.point === keys.focused}
              onFocus={() => {
                keys.setFocused(each.peg.point)
                if (looked !== null && !isInside(each, size)) {
                  look(panned(looked, fit, size, { x: middle.x - each.x, y: middle.y - each.y }))
                }
              }}
              onBlur={() => keys.setFocused(null)}
              onKeyDown={(event) => keys.onKeyDown(event, each.peg.point)}
            />
          ))}
          <ScaleBar pxPerM={view.pxPerM} size={size} />
          {readAlongM !== null && <Reading spot={spotOf(placeAlong(path, readAlongM))} words={reading!} size={size} />}
        </svg>
      )}
      <SketchZoom
        canGrow={view.pxPerM < Math.max(1200, fit.pxPerM)}
        isFitted={looked === null}
        onGrow={() => look(zoomed(view, fit, size, ZOOM_STEP, aim))}
        onShrink={() => look(zoomed(view, fit, size, 1 / ZOOM_STEP, middle))}
        onFit={() => setLooked(null)}
      />
      <p role="status" className="unseen">
        {reading}
      </p>
      {widthPx > 0 && <SketchCloser draw={draw} points={closePoints} widthPx={widthPx} />}
      <SketchTwin commands={commands} chosenPoint={chosenPoint} onChoose={onChoose} />
    </div>
  )
}

interface ReadingProps {
  readonly spot: Spot
  readonly words: string
  readonly size: { readonly widthPx: number }
}

/** What was read off, beside a ring on the line. */
function Reading({ spot, words, size }: ReadingProps) {
  const half = textWidthPx(words, 'normal') / 2 + 10
  const x = Math.min(Math.max(spot.x, half), size.widthPx - half)
  const y = spot.y < 60 ? spot.y + 36 : spot.y - 36
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus
    <g aria-hidden="true" className="sketch-reading">
      <circle cx={spot.x} cy={spot.y} r="7" />
      <rect x={x - half} y={y - 16} width={2 * half} height="32" rx="8" />
      <text x={x} y={y} dy="0.35em" textAnchor="middle">
        {words}
      </text>
    </g>
  )
}

/** The spot of the line nearest to a tap. */
function toSpotOfLine(
  path: LinePath,
  spot: Spot,
  view: SketchView,
  size: { readonly widthPx: number; readonly heightPx: number },
  spotOf: (place: { readonly xM: number; readonly yM: number }) => Spot,
): Spot {
  return spotOf(placeAlong(path, alongPlace(path, toPlace(view, size, spot)).alongM))
}

/** The nearest peg within a finger's reach, unless the line itself is nearer. */
function tappedPeg(arranged: Arranged, spot: Spot, onLine: Spot): number | null {
  let nearest: number | null = null
  let nearestPx = Math.min(TOUCH_PX, Math.hypot(onLine.x - spot.x, onLine.y - spot.y))
  for (const { peg, foot, x, y, isShown } of arranged.pegs) {
    const at = isShown ? { x, y } : foot
    const awayPx = Math.hypot(at.x - spot.x, at.y - spot.y) - (isShown ? 4 : 0)
    if (awayPx >= nearestPx) continue
    nearestPx = awayPx
    nearest = peg.point
  }
  return nearest
}

function isInside({ x, y }: Spot, { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }) {
  return x > 20 && y > 20 && x < widthPx - 20 && y < heightPx - 20
}
