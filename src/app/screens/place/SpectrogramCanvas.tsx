import { useEffect, useMemo, useRef } from 'react'
import type { Ring } from '../../../../shared/bubbles/ring'
import { PASS_BAND_LIMITS, type PassBand } from '../../../../shared/listen/passBand'
import type { Spectrogram } from '../../../../shared/spectrum/spectrogram'
import { drawSpectrogram, spectrogramBitmap } from '../../charts/drawSpectrogram'
import { useInks } from '../../charts/useInks'

interface SpectrogramCanvasProps {
  readonly spectrogram: Spectrogram
  readonly rings: readonly Ring[]
  readonly durationS: number
  readonly band: PassBand | null
}

/** The picture; drawn again when its size, its colours or what is played change. */
export function SpectrogramCanvas({ spectrogram, rings, durationS, band }: SpectrogramCanvasProps) {
  const inks = useInks()
  const canvas = useRef<HTMLCanvasElement>(null)
  const bitmap = useMemo(() => spectrogramBitmap(spectrogram, PASS_BAND_LIMITS, inks.look), [spectrogram, inks.look])
  useEffect(() => {
    const target = canvas.current
    if (target === null) return
    const scene = { spectrogram, rings, durationS, limits: PASS_BAND_LIMITS, passBand: band, inks }
    const draw = () => drawSpectrogram(target, bitmap, scene)
    draw()
    const observer = new ResizeObserver(draw)
    observer.observe(target)
    return () => observer.disconnect()
  }, [spectrogram, bitmap, rings, durationS, band, inks])
  return <canvas ref={canvas} className="spectrogram-canvas" />
}
