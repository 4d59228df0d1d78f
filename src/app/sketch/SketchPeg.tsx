import type { KeyboardEvent } from 'react'
import type { ArrangedPeg } from '../../../shared/sketch/arrangeSketch'
import { wordsOf } from '../../../shared/words/sentence'
import { useSay } from '../frame/useSay'

export interface SketchPegProps {
  readonly arranged: ArrangedPeg
  readonly sidePx: number
  /** The one peg that Tab reaches; the arrows go on from there. */
  readonly isStop: boolean
  readonly hasFocus: boolean
  readonly onFocus: () => void
  readonly onBlur: () => void
  readonly onKeyDown: (event: KeyboardEvent) => void
}

export function SketchPeg({ arranged, sidePx, isStop, hasFocus, onFocus, onBlur, onKeyDown }: SketchPegProps) {
  const { units } = useSay()
  const { peg, foot, x, y, isShown } = arranged
  const widthPx = Math.max(sidePx, 12 + 9 * String(peg.point).length)
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot stand inside a drawing
    <g
      role="button"
      tabIndex={isStop ? 0 : -1}
      className={`sketch-peg sketch-peg-${peg.state}`}
      data-point={peg.point}
      aria-pressed={peg.chosen}
      aria-label={peg.label === null ? String(peg.point) : wordsOf(peg.label, units).text}
      onFocus={onFocus}
      onBlur={onBlur}
      onKeyDown={onKeyDown}
    >
      <circle className="sketch-foot" cx={foot.x} cy={foot.y} r="3.500" />
      {(isShown || hasFocus) && (
        <>
          <path className="sketch-stem" d={`M${foot.x} ${foot.y}L${x} ${y}`} />
          {(peg.chosen || hasFocus) && (
            <rect
              className={hasFocus ? 'sketch-peg-ring sketch-peg-focus' : 'sketch-peg-ring'}
              x={x - widthPx / 2 - 4}
              y={y - sidePx / 2 - 4}
              width={widthPx + 8}
              height={sidePx + 8}
              rx="10"
            />
          )}
          <rect
            className="sketch-peg-square"
            x={x - widthPx / 2}
            y={y - sidePx / 2}
            width={widthPx}
            height={sidePx}
            rx="7"
          />
          <text className="sketch-peg-number" x={x} y={y} dy="0.35em" textAnchor="middle">
            {peg.point}
          </text>
        </>
      )}
    </g>
  )
}
