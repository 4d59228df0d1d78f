import { METRES_PER_FOOT } from '../base/units'
import { formatNumber } from './formatQuantity'
import type { ShownUnits } from './shownUnits'

/**
 * A number as it stands in a field to be changed: without its unit, and with no more figures than a tape has.
 *
 * @param value Lengths in metres; `null` for not told.
 * @param unit  `m` for a length, shown in the reader's unit; anything else as it is.
 */
export function typedQuantity(value: number | null, unit: string, units: ShownUnits): string {
  if (value === null) return ''
  const shown = unit === 'm' && units.length === 'ft' ? value / METRES_PER_FOOT : value
  const text = formatNumber(shown, unit === 'm' && units.length === 'ft' ? 2 : 3)
  return text.replace(/\.?0+$/, '')
}
