import { mean } from '../base/statistics'
import type { DetectorPart, Sounding } from './answer'
import { isUsable } from './settingsDown'

/** What a detector spoke of and how much it may weigh there; `null` where it was asked of no usable air-on clip. */
export function detectorPart(soundings: readonly Sounding[], supportNepers: number): DetectorPart | null {
  const said = soundings
    .filter((sounding) => sounding.row.air === 'on' && isUsable(sounding))
    .flatMap(({ detected }) => detected ?? [])
  if (said.length === 0) return null
  return {
    supportNepers,
    clips: said.length,
    meanTrust: mean(said.map(({ trust }) => trust)),
    newDevices: said.filter(({ isNewDevice }) => isNewDevice).length,
    newCovers: said.filter(({ isNewCover }) => isNewCover).length,
  }
}
