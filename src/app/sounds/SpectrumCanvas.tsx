import { useEffect, useRef, useState } from 'react'
import type { StandingOut } from '../../../shared/evidence/bandsOverFloor'
import type { PassBand } from '../../../shared/listen/passBand'
import type { SpectrumChart, SpectrumLine } from '../charts/spectrumChart'
import { useInks } from '../charts/useInks'
import { useSay } from '../frame/useSay'
import { type SpectrumGestures, spectrumPointers } from './spectrumPointers'

interface SpectrumCanvasProps {
  readonly lines: readonly SpectrumLine[]
  readonly telling: readonly StandingOut[]
  readonly band: PassBand | null
  readonly view: PassBand
  readonly cursorHz: number | null
  readonly stepped: boolean
  readonly levelsWords: string
  readonly onRead: (hz: number) => void
  readonly onBand: (aHz: number, bHz: number) => void
  readonly onZoom: (factor: number, aboutHz: number) => void
}

/** The chart itself. Its program is loaded when the first one is shown. */
export function SpectrumCanvas(props: SpectrumCanvasProps) {
  const { lines, telling, band, view, cursorHz, stepped, levelsWords } = props
  const { say } = useSay()
  const inks = useInks()
  const canvas = useRef<HTMLCanvasElement>(null)
  const [chart, setChart] = useState<SpectrumChart | null>(null)
  const latest = useRef(props)
  latest.current = props

  useEffect(() => {
    let made: SpectrumChart | null = null
    let isGone = false
    void import('../charts/spectrumChart').then(({ makeSpectrumChart }) => {
      if (isGone || canvas.current === null) return
      made = makeSpectrumChart(canvas.current)
      setChart(made)
    })
    return () => {
      isGone = true
      made?.close()
    }
  }, [])

  useEffect(() => {
    const written = telling.map(({ lowHz, highHz, overFloorDb }) => ({
      lowHz,
      highHz,
      words: say('label_over_floor', { over_floor_db: overFloorDb }),
    }))
    chart?.show({ lines, telling: written, passBand: band, cursorHz, view, stepped, levelsWords }, inks)
  }, [chart, lines, telling, band, cursorHz, view, stepped, levelsWords, inks, say])

  useEffect(() => {
    if (chart === null || canvas.current === null) return
    const gestures: SpectrumGestures = {
      hzAt: chart.hzAt,
      clientXOf: chart.clientXOf,
      band: () => latest.current.band,
      onRead: (hz) => latest.current.onRead(hz),
      onBand: (aHz, bHz) => latest.current.onBand(aHz, bHz),
      onZoom: (factor, aboutHz) => latest.current.onZoom(factor, aboutHz),
    }
    return spectrumPointers(canvas.current, gestures)
  }, [chart])

  return <canvas ref={canvas} className="spectrum-canvas" />
}
