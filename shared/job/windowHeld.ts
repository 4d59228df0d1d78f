import type { Found } from './found'

/** How a window stood up to the spade. */
export interface WindowHeld {
  readonly held: boolean
  /** From the place that was named to the damage, m, positive toward the line's end; `null`: no damage was found. */
  readonly errorM: number | null
}

/**
 * Whether the window that was shown held what was found. A window that was opened without finding anything did not hold.
 *
 * @returns `null` where no window had been shown.
 */
export function windowHeld({ alongM, shown }: Found): WindowHeld | null {
  if (shown === null) return null
  if (alongM === null) return { held: false, errorM: null }
  const [fromM, toM] = shown.windowM
  return { held: alongM >= fromM && alongM <= toM, errorM: alongM - shown.alongM }
}
