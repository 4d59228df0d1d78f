import { describe, expect, it } from 'vitest'
import { sentence, type WordValues } from '../../../../shared/words/sentence'
import type { WordKey } from '../../../../shared/words/words'
import type { Say } from '../../../../src/app/frame/useSay'
import type { PanelClip } from '../../../../src/app/sounds/panelClips'
import { spectrumLines } from '../../../../src/app/sounds/spectrumLines'
import { spectrumReading } from '../../../../src/app/sounds/spectrumReading'

const say: Say = (key, ...[values]) => sentence(key as WordKey, (values ?? {}) as WordValues<WordKey>)
const VIEW = { lowHz: 60, highHz: 8000 }

const clip = (id: string, air: 'on' | 'off', levelDbFs: number | null): PanelClip => ({
  id,
  point: 6,
  alongM: 5,
  air,
  sweep: '1',
  take: 1,
  file: `${id}.wav`,
  sha256: id,
  evidence: { bands: Array.from({ length: 21 }, (_, i) => ({ midHz: 10 ** (1.8 + i / 10), levelDbFs })) } as never,
  usable: true,
})
const on = clip('a', 'on', -40)
const off = clip('b', 'off', null)
const clips = { on, off, before: null, after: null }
const density = (level: number) => ({
  ok: true as const,
  value: { density: new Float64Array(2000).fill(10 ** (level / 10)), binWidthHz: 6, segmentCount: 9 },
})

describe('lines of a spectrum', () => {
  it('are those of the clips that were read', () => {
    const spectra = new Map([['a', density(-60)]])
    expect(spectrumLines(clips, spectra, 'fine', VIEW).map(({ role }) => role)).toEqual(['on'])
  })

  it('get finer when less is in view', () => {
    const spectra = new Map([['a', density(-60)]])
    const placesIn = (view: typeof VIEW) => {
      const [line] = spectrumLines(clips, spectra, 'fine', view)
      return line!.places.filter(({ x }) => x >= 1000 && x <= 2000).length
    }
    expect(placesIn({ lowHz: 1000, highHz: 2000 })).toBeGreaterThan(4 * placesIn(VIEW))
  })

  it('step from edge to edge in one-third octaves, and break where a clip does not say', () => {
    const lines = spectrumLines(clips, new Map(), 'thirds', VIEW)
    expect(lines[0]!.places[0]!.x).toBeCloseTo(56.23, 2)
    expect(lines[0]!.places.at(-1)!.x).toBeCloseTo(7079.46, 2)
    expect(lines[1]!.places.every(({ y }) => y === null)).toBe(true)
  })
})

describe('reading a spectrum', () => {
  it('names the frequency, each clip and its level', () => {
    const lines = spectrumLines(
      clips,
      new Map([
        ['a', density(-60)],
        ['b', density(-72.5)],
      ]),
      'fine',
      VIEW,
    )
    expect(spectrumReading(lines, { cursorHz: 440, detail: 'fine', say })).toBe(
      '440 Hz: Point 6, air on -60.0 dBFS/Hz; Point 6, air off -72.5 dBFS/Hz',
    )
  })

  it('says when a clip does not tell', () => {
    const lines = spectrumLines(clips, new Map(), 'thirds', VIEW)
    expect(spectrumReading(lines, { cursorHz: 440, detail: 'thirds', say })).toBe(
      '440 Hz: Point 6, air on -40.0 dBFS; Point 6, air off not told',
    )
  })

  it('asks for a tap before that', () => {
    expect(spectrumReading([], { cursorHz: null, detail: 'fine', say })).toBe('Tap the spectrum to read it.')
  })
})
