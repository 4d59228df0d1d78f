import { useEffect, useMemo, useRef } from 'react'
import type { Ring } from '../../../shared/bubbles/ring'
import { PASS_BAND_LIMITS, type PassBand } from '../../../shared/listen/passBand'
import type { SpectrogramPicture } from '../../worker/protocol'
import { drawSpectrogram, spectrogramBitmap } from '../charts/drawSpectrogram'
import { useInks } from '../charts/useInks'

interface SpectrogramCanvasProps {
  readonly picture: SpectrogramPicture
  readonly rings: readonly Ring[]
  readonly durationS: number
  readonly band: PassBand | null
}

/** The picture; drawn again when its size, its colours or what is played change. */
export function SpectrogramCanvas({ picture, rings, durationS, band }: SpectrogramCanvasProps) {
  const inks = useInks()
  const canvas = useRef<HTMLCanvasElement>(null)
  const bitmap = useMemo(() => spectrogramBitmap(picture, inks.look), [picture, inks.look])
  useEffect(() => {
    const target = canvas.current
    if (target === null) return
    const scene = { picture, rings, durationS, limits: PASS_BAND_LIMITS, passBand: band, inks }
    const draw = () => drawSpectrogram(target, bitmap, scene)
    draw()
    const observer = new ResizeObserver(draw)
    observer.observe(target)
    return () => observer.disconnect()
  }, [picture, bitmap, rings, durationS, band, inks])
  return <canvas ref={canvas} className="spectrogram-canvas" />
}
