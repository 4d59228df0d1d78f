import type { KeyboardEvent } from 'react'
import type { Spot } from '../../../../shared/sketch/arrangeSketch'
import type { SpottedHandle } from './padHandle'

export interface PadHandleMarkProps {
  readonly spotted: SpottedHandle
  readonly isChosen: boolean
  /** The one handle that Tab reaches; the arrows or Tab with a handle chosen go on from there. */
  readonly isStop: boolean
  readonly onFocus: () => void
  readonly onBlur: () => void
  readonly onKeyDown: (event: KeyboardEvent) => void
}

/** 48 px is what a thumb may be expected to hit; one more, as a browser rounds what lies between pixels. */
const TARGET_PX = 49

/** A handle to be chosen and moved by keyboard; fingers are told by the pad as a whole. */
export function PadHandleMark({ spotted, isChosen, isStop, onFocus, onBlur, onKeyDown }: PadHandleMarkProps) {
  const { handle, grips } = spotted
  const grip = grips.at(-1)!
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot stand inside a drawing
    <g
      role="button"
      tabIndex={isStop ? 0 : -1}
      className={`sketchpad-handle sketchpad-handle-${handle.shape}`}
      data-handle={handle.id}
      data-moves={handle.canMove}
      aria-pressed={isChosen}
      aria-label={handle.label}
      onFocus={onFocus}
      onBlur={onBlur}
      onKeyDown={onKeyDown}
    >
      <rect
        className="sketchpad-target"
        x={grip.x - TARGET_PX / 2}
        y={grip.y - TARGET_PX / 2}
        width={TARGET_PX}
        height={TARGET_PX}
      />
      <Shape shape={handle.shape} isChosen={isChosen} at={grips[0]!} grip={grip} />
    </g>
  )
}

interface ShapeProps {
  readonly shape: SpottedHandle['handle']['shape']
  readonly isChosen: boolean
  readonly at: Spot
  readonly grip: Spot
}

function Shape({ shape, isChosen, at, grip }: ShapeProps) {
  const halo = <circle className="sketchpad-halo" cx={grip.x} cy={grip.y} r="21" />
  if (shape === 'corner') {
    return (
      <>
        {isChosen && halo}
        <circle className="sketchpad-corner" cx={at.x} cy={at.y} r={isChosen ? 10 : 8} />
      </>
    )
  }
  if (shape === 'bar')
    return <rect className="sketchpad-corner" x={at.x - 8} y={at.y - 8} width="16" height="16" rx="4" />
  if (shape === 'cross')
    return <path className="sketchpad-cross" d={`M${at.x - 14} ${at.y}h28M${at.x} ${at.y - 14}v28`} />
  return isChosen ? halo : <circle className="sketchpad-ring" cx={grip.x} cy={grip.y} r="17" />
}
