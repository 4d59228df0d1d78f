import type { JobLine } from '../../../../../shared/job/job'
import type { SketchPlace } from '../../../../../shared/line/line'
import { lineCorners } from '../../../../../shared/line/lineCorners'
import { linePath } from '../../../../../shared/line/linePath'
import { placeAlong } from '../../../../../shared/line/placeAlong'
import { pointsOnLine } from '../../../../../shared/sketch/pointsOnLine'

/** All that is in view when the whole sketch is shown; the photo too, where it is what is worked on or all there is. */
export function placesOf(jobLine: JobLine, withPhoto: boolean): SketchPlace[] {
  const { line, signs = [], site } = jobLine
  const corners = lineCorners(line)
  const path = linePath(line)
  const along = [line.airInletM, ...line.noises.map(({ atM }) => atM)].filter((atM) => atM !== null)
  const beside = [...signs, ...(line.lengthM === null ? [] : pointsOnLine(jobLine))]
  const drawn = [
    ...corners,
    ...(corners.length === 0 ? [] : along.map((atM) => placeAlong(path, atM))),
    ...beside.map(({ alongM, offsetM }) => placeAlong(path, alongM, offsetM)),
    ...(site?.startAt ? [site.startAt] : []),
  ]
  const photo = site?.photo
  if (!photo || (drawn.length > 0 && !withPhoto)) return drawn
  const [halfX, halfY] = [(photo.widthPx * photo.mPerPx) / 2, (photo.heightPx * photo.mPerPx) / 2]
  const { xM, yM } = photo.centre
  return [...drawn, { xM: xM - halfX, yM: yM - halfY }, { xM: xM + halfX, yM: yM + halfY }]
}
