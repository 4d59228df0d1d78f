import { formatNumber } from '../../../shared/words/formatQuantity'
import type { Say } from '../frame/useSay'
import type { PanelClip } from './panelClips'
import type { ClipLine } from './spectrumLines'

interface ReadingOptions {
  readonly cursorHz: number | null
  readonly detail: 'fine' | 'thirds'
  readonly say: Say
}

/** What the lines read at a frequency, in words. */
export function spectrumReading(lines: readonly ClipLine[], { cursorHz, detail, say }: ReadingOptions): string {
  if (cursorHz === null) return say('spectrum_read_none')
  const levels = lines.map(({ clip, places }) => {
    const level = detail === 'thirds' ? stepAt(places, cursorHz) : nearestAt(places, cursorHz)
    const words = clipWords(clip, say)
    if (level === null) return say('label_no_level', { clip: words })
    if (detail === 'thirds') return say('label_band_at', { clip: words, level_dbfs: level })
    return say('label_density_at', { clip: words, level: formatNumber(level, 1) })
  })
  return say('label_read_at', { read_hz: cursorHz, levels: levels.join('; ') })
}

/** What a clip is called. */
export function clipWords({ point, air }: Pick<PanelClip, 'point' | 'air'>, say: Say): string {
  return air === 'on' ? say('label_clip_on', { point }) : say('label_clip_off', { point })
}

function nearestAt(places: ClipLine['places'], hz: number): number | null {
  const away = (x: number) => Math.abs(Math.log(x / hz))
  const [first] = places
  if (first === undefined || hz > places.at(-1)!.x * 1.05) return null
  return places.reduce((best, each) => (away(each.x) < away(best.x) ? each : best), first).y
}

function stepAt(places: ClipLine['places'], hz: number): number | null {
  if (places.length === 0 || hz < places[0]!.x) return null
  return places.find(({ x }) => x >= hz)?.y ?? null
}
