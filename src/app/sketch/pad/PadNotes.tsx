import type { SketchPlace } from '../../../../shared/line/line'
import type { Spot } from '../../../../shared/sketch/arrangeSketch'
import { type PadNote, textBox } from './padNote'

export interface PadNotesProps {
  readonly notes: readonly PadNote[]
  readonly toSpot: (place: SketchPlace) => Spot
  readonly size: { readonly widthPx: number; readonly heightPx: number }
}

const SQUARE_PX = 13

/** Lengths, right angles and first taps. For the eye: the handles have the words. */
export function PadNotes({ notes, toSpot, size }: PadNotesProps) {
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus
    <g aria-hidden="true">
      {notes.map((note) => {
        if (note.kind === 'text') return <Words key={note.id} note={note} spot={toSpot(note.at)} size={size} />
        if (note.kind === 'dot') {
          const { x, y } = toSpot(note.at)
          return <circle key={note.id} className="sketchpad-dot" cx={x} cy={y} r="6" />
        }
        if (note.kind === 'line') {
          const [from, to] = [toSpot(note.from), toSpot(note.to)]
          return <path key={note.id} className="sketchpad-measure" d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />
        }
        return <path key={note.id} className="sketchpad-square" d={squareOf(note, toSpot(note.at))} />
      })}
    </g>
  )
}

interface WordsProps {
  readonly note: Extract<PadNote, { kind: 'text' }>
  readonly spot: Spot
  readonly size: PadNotesProps['size']
}

function Words({ note, spot, size }: WordsProps) {
  const { x, y } = textBox(note, spot, size)
  return (
    <text className="sketch-text sketchpad-words" x={x} y={y} dy="0.35em" textAnchor="middle">
      {note.words}
    </text>
  )
}

function squareOf({ along, beside }: Extract<PadNote, { kind: 'square' }>, { x, y }: Spot): string {
  const [a, b] = [along.map((each) => each * SQUARE_PX), beside.map((each) => each * SQUARE_PX)]
  const at = (right: number, up: number) => `${x + right} ${y - up}`
  return `M${at(a[0]!, a[1]!)}L${at(a[0]! + b[0]!, a[1]! + b[1]!)}L${at(b[0]!, b[1]!)}`
}
