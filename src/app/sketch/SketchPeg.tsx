import type { KeyboardEvent } from 'react'
import type { ArrangedPeg } from '../../../shared/sketch/arrangeSketch'
import { wordsOf } from '../../../shared/words/sentence'
import { useSay } from '../frame/useSay'
import { PegShape } from './PegShape'

export interface SketchPegProps {
  readonly arranged: ArrangedPeg
  /** The one peg that Tab reaches; the arrows go on from there. */
  readonly isStop: boolean
  readonly hasFocus: boolean
  readonly onFocus: () => void
  readonly onBlur: () => void
  readonly onKeyDown: (event: KeyboardEvent) => void
}

/** A peg to be chosen by keyboard and screen reader; fingers are told by the picture as a whole. */
export function SketchPeg({ arranged, isStop, hasFocus, onFocus, onBlur, onKeyDown }: SketchPegProps) {
  const { units } = useSay()
  const { peg } = arranged
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
      <PegShape arranged={arranged} hasFocus={hasFocus} />
    </g>
  )
}
