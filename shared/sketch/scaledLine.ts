import type { JobLine } from '../job/job'
import type { SketchPlace } from '../line/line'
import { lineCorners } from '../line/lineCorners'

/**
 * A line drawn at a wrong scale, put right: everything along it and beside it by the same factor. Where clips were taken
 * was told by tape and stays.
 *
 * @param factor > 0.
 * @param about  The place that stays where it is.
 */
export function scaledLine(jobLine: JobLine, factor: number, about: SketchPlace): JobLine {
  const { line, signs, plannedPoints, site } = jobLine
  const by = (m: number) => m * factor
  const withAlong = <Thing extends { readonly alongM: number; readonly offsetM: number }>(thing: Thing): Thing => ({
    ...thing,
    alongM: by(thing.alongM),
    offsetM: by(thing.offsetM),
  })
  const corners = lineCorners(line)
  return {
    ...jobLine,
    line: {
      ...line,
      lengthM: line.lengthM === null ? null : by(line.lengthM),
      airInletM: line.airInletM === null ? null : by(line.airInletM),
      vertices: corners.length === 0 ? null : corners.map((corner) => scaledPlace(corner, factor, about)),
      stretches: line.stretches.map((each) => ({ ...each, fromM: by(each.fromM), toM: by(each.toM) })),
      fittings: line.fittings.map((each) => ({ ...each, atM: by(each.atM) })),
      noises: line.noises.map((each) => ({ ...each, atM: by(each.atM) })),
    },
    ...(signs && { signs: signs.map(withAlong) }),
    ...(plannedPoints && { plannedPoints: plannedPoints.map(withAlong) }),
    ...(site && { site: { ...site, startAt: site.startAt && scaledPlace(site.startAt, factor, about) } }),
  }
}

/** A place by a factor about another one. */
export function scaledPlace({ xM, yM }: SketchPlace, factor: number, about: SketchPlace): SketchPlace {
  return { xM: about.xM + (xM - about.xM) * factor, yM: about.yM + (yM - about.yM) * factor }
}
