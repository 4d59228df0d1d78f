import type { PointSpectrum } from '../job/keptAnswer'
import { formatQuantity } from '../words/formatQuantity'
import { sentence } from '../words/sentence'
import type { Picture, Shape } from './picture'

const [WIDTH_PX, HEIGHT_PX] = [220, 130]
const [LEFT, RIGHT, TOP, BOTTOM] = [38, 214, 22, 108]
const TICKS_HZ = [100, 1000]
const GRID_DB = 20

/** Levels that all points of a report are drawn between, dBFS, multiples of 20. */
export function levelRange(spectra: readonly PointSpectrum[]): readonly [number, number] {
  const levels = spectra.flatMap(({ onDbFs, offDbFs }) => [...onDbFs, ...offDbFs]).filter((level) => level !== null)
  if (levels.length === 0) return [-100, 0]
  const low = Math.floor(Math.min(...levels) / GRID_DB) * GRID_DB
  return [low, Math.max(low + GRID_DB, Math.ceil(Math.max(...levels) / GRID_DB) * GRID_DB)]
}

/** A point's levels by band, with the air on and off, between the levels of all points so that they can be compared. */
export function spectrumPicture(spectrum: PointSpectrum, [lowDb, highDb]: readonly [number, number]): Picture {
  const { point, midHz, onDbFs, offDbFs } = spectrum
  const [firstHz, lastHz] = [midHz[0] ?? 63, midHz.at(-1) ?? 6310]
  const x = (hz: number) => LEFT + (Math.log(hz / firstHz) / Math.log(lastHz / firstHz)) * (RIGHT - LEFT)
  const y = (db: number) => TOP + ((highDb - db) / (highDb - lowDb)) * (BOTTOM - TOP)
  const levels = Array.from({ length: Math.round((highDb - lowDb) / GRID_DB) + 1 }, (_, i) => lowDb + i * GRID_DB)
  const line = (told: readonly (number | null)[]) => {
    let isOpen = false
    return told
      .map((level, i) => {
        if (level === null) {
          isOpen = false
          return ''
        }
        const step = `${isOpen ? 'L' : 'M'}${x(midHz[i]!).toFixed(1)} ${y(level).toFixed(1)}`
        isOpen = true
        return step
      })
      .join('')
  }
  const text = (atX: number, atY: number, anchor: 'start' | 'middle' | 'end', words: string): Shape => ({
    kind: 'text',
    x: atX,
    y: atY,
    anchor,
    text: words,
  })
  return {
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
    label: sentence('label_point', { point }),
    shapes: [
      ...levels.map((db): Shape => ({ kind: 'path', d: `M${LEFT} ${y(db).toFixed(1)}H${RIGHT}`, look: 'rule' })),
      { kind: 'path', d: `M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}`, look: 'axis' },
      { kind: 'path', d: line(offDbFs), look: 'off' },
      { kind: 'path', d: line(onDbFs), look: 'on' },
      text(LEFT, 14, 'start', sentence('label_point', { point })),
      ...[lowDb, highDb].map((db) => text(LEFT - 5, y(db) + 4, 'end', formatQuantity('level_step', db))),
      ...TICKS_HZ.map((hz) => text(x(hz), BOTTOM + 16, 'middle', formatQuantity('tick_hz', hz))),
    ],
  }
}
