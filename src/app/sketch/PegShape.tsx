import type { ArrangedPeg, Spot } from '../../../shared/sketch/arrangeSketch'

/** Side of a peg's square, and from its foot to the middle of the square, px. */
export const PEG_PX = 26
export const STEM_PX = 38
const TICK_PX = 6

export interface PegShapeProps {
  readonly arranged: ArrangedPeg
  readonly hasFocus?: boolean
}

/** A stake beside the line: its foot at the place, its number on a rounded square. */
export function PegShape({ arranged: { peg, foot, x, y, isShown, isCrowded }, hasFocus = false }: PegShapeProps) {
  const widthPx = Math.max(PEG_PX, 8 + 9 * String(peg.point).length)
  return (
    <>
      {isCrowded ? (
        <path className="sketch-tick" d={tickOf(foot, peg.side)} />
      ) : (
        <circle className="sketch-foot" cx={foot.x} cy={foot.y} r="3.500" />
      )}
      {(isShown || hasFocus) && (
        <>
          <path className="sketch-stem" d={`M${foot.x} ${foot.y}L${x} ${y}`} />
          {(peg.chosen || hasFocus) && (
            <rect
              className={hasFocus ? 'sketch-peg-ring sketch-peg-focus' : 'sketch-peg-ring'}
              x={x - widthPx / 2 - 4}
              y={y - PEG_PX / 2 - 4}
              width={widthPx + 8}
              height={PEG_PX + 8}
              rx="10"
            />
          )}
          <rect
            className="sketch-peg-square"
            x={x - widthPx / 2}
            y={y - PEG_PX / 2}
            width={widthPx}
            height={PEG_PX}
            rx="7"
          />
          <text className="sketch-peg-number" x={x} y={y} dy="0.35em" textAnchor="middle">
            {peg.point}
          </text>
        </>
      )}
    </>
  )
}

/** Across the line: where feet stand close, the pipe is still seen between them. */
function tickOf({ x, y }: Spot, [sideX, sideY]: readonly [number, number]): string {
  const [dx, dy] = [TICK_PX * sideX, TICK_PX * sideY]
  return `M${x - dx} ${y + dy}L${x + dx} ${y - dy}`
}
