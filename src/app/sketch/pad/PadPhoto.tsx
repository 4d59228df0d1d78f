import type { SitePhoto } from '../../../../shared/job/site'
import { type SketchView, toSpot, type ViewSize } from '../sketchView'

export interface PadPhotoProps {
  readonly photo: SitePhoto
  readonly url: string
  readonly view: SketchView
  readonly size: ViewSize
}

/** The photo of the site at its place and scale, turned as it was told. */
export function PadPhoto({
  photo: { centre, mPerPx, widthPx, heightPx, turnDeg = 0 },
  url,
  view,
  size,
}: PadPhotoProps) {
  const { x, y } = toSpot(view, size, centre)
  const scale = mPerPx * view.pxPerM
  const [width, height] = [widthPx * scale, heightPx * scale]
  return (
    <image
      className="sketchpad-photo"
      href={url}
      x={x - width / 2}
      y={y - height / 2}
      width={width}
      height={height}
      preserveAspectRatio="none"
      transform={turnDeg === 0 ? undefined : `rotate(${turnDeg} ${x} ${y})`}
    />
  )
}
