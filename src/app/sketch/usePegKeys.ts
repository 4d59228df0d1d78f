import { type KeyboardEvent, type RefObject, useState } from 'react'
import type { DrawPeg } from '../../../shared/sketch/drawList'

export interface PegKeysOptions {
  readonly frame: RefObject<SVGSVGElement | null>
  /** In order along the line. */
  readonly pegs: readonly DrawPeg[]
  readonly chosenPoint: number | null
  readonly onChoose: (point: number) => void
}

const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 }

/** One stop for Tab; arrows, Home and End go along the line from peg to peg; Enter or Space chooses. */
export function usePegKeys({ frame, pegs, chosenPoint, onChoose }: PegKeysOptions) {
  const [focused, setFocused] = useState<number | null>(null)
  const stop =
    pegs.find(({ point }) => point === (focused ?? chosenPoint))?.point ??
    pegs.find(({ state }) => state === 'best')?.point ??
    pegs[0]?.point
  const focus = (point: number | undefined) =>
    frame.current?.querySelector<SVGGElement>(`[data-point="${point}"]`)?.focus({ preventScroll: true })
  const onKeyDown = (event: KeyboardEvent, point: number) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const here = pegs.findIndex((peg) => peg.point === point)
    const step = STEPS[event.key]
    if (event.key === 'Enter' || event.key === ' ') onChoose(point)
    else if (event.key === 'Home') focus(pegs[0]?.point)
    else if (event.key === 'End') focus(pegs.at(-1)?.point)
    else if (step !== undefined) focus(pegs[here + step]?.point)
    else return
    event.preventDefault()
  }
  return { focused, setFocused, stop, onKeyDown }
}
