import { median } from '../base/statistics'
import type { FitModel } from './fitModel'

/**
 * How far each band stands over its floor at each point, with the air on, dB: the median over the point's
 * settings-down; `null` where a band says nothing.
 *
 * The floor is what the air-off clip of the setting-down tells, else the sweep's.
 */
export function bandsAtPoints({ settings, toldFloorDb, floorDb }: FitModel): Map<number, (number | null)[]> {
  const levels = new Map<number, number[][]>()
  for (const [k, { point, on }] of settings.entries()) {
    if (on === null) continue
    const bands = levels.get(point) ?? Array.from(floorDb, () => [])
    const told = toldFloorDb[k]!
    for (const [b, all] of bands.entries()) {
      if (on.weight[b] === 0) continue
      all.push(on.levelDb[b]! - (told !== null && told.weight[b]! > 0 ? told.levelDb[b]! : floorDb[b]!))
    }
    levels.set(point, bands)
  }
  return new Map(
    [...levels].map(([point, bands]) => [point, bands.map((all) => (all.length === 0 ? null : median(all)))]),
  )
}
