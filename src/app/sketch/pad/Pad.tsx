import { type KeyboardEvent, type ReactNode, useEffect, useMemo, useRef, useState } from 'react'
import type { SitePhoto } from '../../../../shared/job/site'
import type { SketchPlace } from '../../../../shared/line/line'
import type { Spot } from '../../../../shared/sketch/arrangeSketch'
import { useSay } from '../../frame/useSay'
import { arranged as arrangedIn } from '../arranged'
import type { DrawSketch } from '../drawSketch'
import { PegShape } from '../PegShape'
import { ScaleBar } from '../ScaleBar'
import { SketchPicture } from '../SketchPicture'
import { SketchZoom } from '../SketchZoom'
import { type SketchView, STRIP_PX, toPlace, toSpot } from '../sketchView'
import { useWidthPx } from '../useWidthPx'
import { PadGrid } from './PadGrid'
import { PadHandleMark } from './PadHandleMark'
import { PadNotes } from './PadNotes'
import { PadPhoto } from './PadPhoto'
import { handleAt, type PadHandle, type SpottedHandle } from './padHandle'
import { type PadNote, textBox } from './padNote'
import { isOnPad, padFit, padPanned, padZoomed } from './padView'
import { usePadPointers } from './usePadPointers'
import '../Sketch.css'
import './Pad.css'

export interface PadProps {
  readonly draw: DrawSketch
  /** What has to be in view when all is shown. */
  readonly places: readonly SketchPlace[]
  readonly handles: readonly PadHandle[]
  readonly notes: readonly PadNote[]
  readonly photo: SitePhoto | null
  readonly photoUrl: string | null
  readonly chosenId: string | null
  /** A finger on the sheet where nothing is. */
  readonly onTap: (place: SketchPlace, pxPerM: number) => void
  readonly onChoose: (id: string) => void
  /** A handle pulled to a place: while it is pulled, and when it is let go there. */
  readonly onPull: (id: string, to: SketchPlace, pxPerM: number) => void
  readonly onDrop: (id: string, to: SketchPlace, pxPerM: number) => void
  readonly onLetGo: () => void
  /** Moved by a key: so many steps to the right and up. */
  readonly onNudge: (id: string, right: number, up: number) => void
  readonly onRemove: (id: string) => void
  /** A handle has lost the focus: what keys did to it is done. */
  readonly onLeave: () => void
  /** In the corner of the sheet. */
  readonly children?: ReactNode
}

const ZOOM_STEP = 1.5
/** A corner's mark with its halo, px. */
const CORNER_HALF_PX = 14
/** Steps of one press of an arrow key, with and without Shift. */
const BIG_STEPS = 10

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** A sheet to sketch on: tapped, pulled, moved and zoomed by thumb and mouse, and all of it by keyboard too. */
export function Pad(props: PadProps) {
  const { draw, places, handles, chosenId, photo, photoUrl, children } = props
  const { say, units } = useSay()
  const frame = useRef<SVGSVGElement>(null)
  const { ref, widthPx } = useWidthPx()
  const size = { widthPx, heightPx: heightFor(widthPx) }
  const [looked, setLooked] = useState<SketchView | null>(null)
  const fit = padFit(places, size)
  const view = looked ?? fit
  const [isPulling, setPulling] = useState(false)
  useKeptInView({ places, view, size, isPulling, onLost: () => setLooked(null) })
  const commands = useMemo(() => draw(view.pxPerM), [draw, view.pxPerM])
  const spotOf = (place: SketchPlace) => toSpot(view, size, place)
  const words = props.notes.flatMap((note) => (note.kind === 'text' ? [textBox(note, spotOf(note.at), size)] : []))
  const corners = handles
    .filter(({ shape }) => shape === 'corner')
    .map(({ at }) => ({ ...spotOf(at), halfX: CORNER_HALF_PX, halfY: CORNER_HALF_PX }))
  const arranged = arrangedIn(commands, view, size, units, [...words, ...corners])
  const spotted = handles.map((handle): SpottedHandle => {
    const peg = arranged.pegs.find((each) => each.peg.id === handle.id)
    const at = spotOf(handle.at)
    return { handle, grips: peg?.isShown ? [at, { x: peg.x, y: peg.y }] : [at] }
  })
  const pulledTo = (id: string, from: Spot, to: Spot): SketchPlace => {
    const { xM, yM } = handles.find((handle) => handle.id === id)!.at
    return { xM: xM + (to.x - from.x) / view.pxPerM, yM: yM - (to.y - from.y) / view.pxPerM }
  }
  // Where a pull began is kept, as the handle itself moves with what is drawn anew under the finger.
  const began = useRef<{ readonly id: string; readonly at: SketchPlace } | null>(null)
  const pullTarget = (id: string, from: Spot, to: Spot): SketchPlace => {
    if (began.current?.id !== id) began.current = { id, at: pulledTo(id, from, from) }
    const { xM, yM } = began.current.at
    return { xM: xM + (to.x - from.x) / view.pxPerM, yM: yM - (to.y - from.y) / view.pxPerM }
  }
  const release = () => {
    began.current = null
    setPulling(false)
  }
  const zoom = (factor: number, about: Spot) => setLooked((now) => padZoomed(now ?? fit, size, factor, about))
  const pointers = usePadPointers(frame, {
    grab: (spot) => {
      const handle = handleAt(spotted, spot, chosenId)
      return handle?.canMove ? handle.id : null
    },
    onTap: (spot) => {
      const handle = handleAt(spotted, spot, chosenId)
      if (looked === null) setLooked(view) // a sheet that moves under the finger after each tap is not drawn on
      if (handle !== null) return props.onChoose(handle.id)
      props.onTap(toPlace(view, size, spot), view.pxPerM)
    },
    onPull: (id, from, to) => {
      if (looked === null) setLooked(view)
      setPulling(true)
      props.onPull(id, pullTarget(id, from, to), view.pxPerM)
    },
    onDrop: (id, from, to) => {
      props.onDrop(id, pullTarget(id, from, to), view.pxPerM)
      release()
    },
    onLetGo: () => {
      props.onLetGo()
      release()
    },
    onPan: (by) => setLooked((now) => padPanned(now ?? fit, by)),
    onZoom: zoom,
  })
  const middle = { x: size.widthPx / 2, y: size.heightPx / 2 }
  const stop = handles.find(({ id }) => id === chosenId) ?? handles[0]
  const onKeyDown = (event: KeyboardEvent, id: string) => {
    if (event.key === 'Enter' || event.key === ' ') props.onChoose(id)
    else if (event.key === 'Delete' || event.key === 'Backspace') props.onRemove(id)
    else if (event.key === 'PageDown' || event.key === 'PageUp') {
      const at = handles.findIndex((handle) => handle.id === id) + (event.key === 'PageDown' ? 1 : -1)
      const next = handles[(at + handles.length) % handles.length]!
      frame.current?.querySelector<SVGGElement>(`[data-handle="${CSS.escape(next.id)}"]`)?.focus()
    } else if (ARROWS[event.key]) {
      const [right, up] = ARROWS[event.key]!
      const times = event.shiftKey ? BIG_STEPS : 1
      props.onNudge(id, right * times, up * times)
    } else return
    event.preventDefault()
  }
  return (
    <div className="sketch sketchpad" ref={ref}>
      {widthPx > 0 && (
        <div className="sketchpad-sheet">
          {/* biome-ignore lint/a11y/useSemanticElements: a drawing with buttons in it is a group, not a field set */}
          <svg
            ref={frame}
            className="sketch-paper sketchpad-paper"
            role="group"
            aria-label={say('label_pad')}
            width={size.widthPx}
            height={size.heightPx + STRIP_PX}
            viewBox={`0 0 ${size.widthPx} ${size.heightPx + STRIP_PX}`}
            {...pointers}
          >
            <PadGrid view={view} size={size} />
            {photo && photoUrl && <PadPhoto photo={photo} url={photoUrl} view={view} size={size} />}
            <SketchPicture commands={commands} arranged={arranged} toSpot={spotOf} />
            <PadNotes notes={props.notes} toSpot={spotOf} size={size} />
            {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus */}
            <g aria-hidden="true">
              {arranged.pegs.map((each) => (
                <g key={each.peg.id} className={`sketch-peg-${each.peg.state}`}>
                  <PegShape arranged={each} />
                </g>
              ))}
            </g>
            {spotted.map((each) => (
              <PadHandleMark
                key={each.handle.id}
                spotted={each}
                isChosen={each.handle.id === chosenId}
                isStop={each.handle.id === stop?.id}
                onFocus={() => {
                  const by = broughtIn(each.grips[0]!, size)
                  if (by !== null) setLooked(padPanned(view, by))
                }}
                onBlur={props.onLeave}
                onKeyDown={(event) => onKeyDown(event, each.handle.id)}
              />
            ))}
            <ScaleBar pxPerM={view.pxPerM} size={size} />
          </svg>
          {children}
        </div>
      )}
      <SketchZoom
        canGrow={view.pxPerM < 1200}
        isFitted={false}
        onGrow={() => zoom(ZOOM_STEP, middle)}
        onShrink={() => zoom(1 / ZOOM_STEP, middle)}
        onFit={() => setLooked(null)}
      />
    </div>
  )
}

/** As high as a thumb reaches from below, and with room round it to scroll the page by. */
function heightFor(widthPx: number): number {
  const mostPx = Math.max(260, window.innerHeight * 0.52 - STRIP_PX)
  return Math.round(Math.min(Math.max(widthPx * 0.85, 260), mostPx, 560))
}

interface KeptInView {
  readonly places: readonly SketchPlace[]
  readonly view: SketchView
  readonly size: { readonly widthPx: number; readonly heightPx: number }
  readonly isPulling: boolean
  readonly onLost: () => void
}

/** A typed length or an undone step may put something off the sheet: then all of it is shown. Never while a finger pulls. */
function useKeptInView({ places, view, size, isPulling, onLost }: KeptInView): void {
  const latest = useRef({ view, size, isPulling, onLost })
  useEffect(() => {
    latest.current = { view, size, isPulling, onLost }
  })
  const seen = useRef(new Set<string>())
  useEffect(() => {
    const now = latest.current
    const keys = places.map(({ xM, yM }) => `${xM} ${yM}`)
    const isNew = (i: number) => !seen.current.has(keys[i]!)
    const isLost = places.some((place, i) => isNew(i) && !isOnPad(now.view, now.size, place))
    if (isLost && !now.isPulling && now.size.widthPx > 0 && seen.current.size > 0) now.onLost()
    seen.current = new Set(keys)
  }, [places])
}

/** How far the sheet must move so that a spot is on it; `null` where it is. */
function broughtIn({ x, y }: Spot, { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }) {
  if (x >= 0 && y >= 0 && x <= widthPx && y <= heightPx) return null
  return { x: widthPx / 2 - x, y: heightPx / 2 - y }
}
