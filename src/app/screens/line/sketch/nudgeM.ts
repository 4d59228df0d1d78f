import { METRES_PER_FOOT } from '../../../../../shared/base/units'
import type { ShownUnits } from '../../../../../shared/words/shownUnits'

/** One press of an arrow key, m. Chosen: as fine as a tape is laid, and ten times as much with Shift. */
export function nudgeM({ length }: ShownUnits): number {
  return length === 'ft' ? METRES_PER_FOOT / 12 : 0.05
}
