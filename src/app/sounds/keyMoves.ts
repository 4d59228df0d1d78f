import type { KeyboardEvent } from 'react'

/**
 * Does what a key stands for, and keeps the page from doing something else with it.
 *
 * @param moves Keys as the browser names them, and what each does. Keys held with control, alt or command stay the browser's.
 */
export function keyMoves(event: KeyboardEvent, moves: readonly (readonly [keys: string, move: () => void])[]): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return
  const found = moves.find(([keys]) => keys.split(' ').includes(event.key))
  if (found === undefined) return
  event.preventDefault()
  found[1]()
}
