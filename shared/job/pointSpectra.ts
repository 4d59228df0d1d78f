import { median } from '../base/statistics'
import type { Sounding } from '../locate/answer'
import { isUsable } from '../locate/settingsDown'
import type { PointSpectrum } from './keptAnswer'

/** Band levels of every point, by rising number: the median over its usable clips, air on and air off apart. */
export function pointSpectra(soundings: readonly Sounding[]): PointSpectrum[] {
  const midHz = soundings.find(({ evidence }) => evidence !== null)?.evidence?.bands.map((band) => band.midHz) ?? []
  const points = [...new Set(soundings.map(({ row }) => row.point))].sort((a, b) => a - b)
  return points.map((point) => {
    const own = soundings.filter(({ row }) => row.point === point)
    return { point, midHz, onDbFs: levels(own, 'on', midHz), offDbFs: levels(own, 'off', midHz) }
  })
}

function levels(own: readonly Sounding[], air: 'on' | 'off', midHz: readonly number[]): (number | null)[] {
  const clips = own.filter((sounding) => sounding.row.air === air && isUsable(sounding))
  return midHz.map((_, i) => {
    const told = clips.flatMap(({ evidence }) => evidence?.bands[i]?.levelDbFs ?? [])
    return told.length === 0 ? null : median(told)
  })
}
