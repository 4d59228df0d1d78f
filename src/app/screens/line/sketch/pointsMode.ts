import { alongPlace } from '../../../../../shared/line/alongPlace'
import { linePath } from '../../../../../shared/line/linePath'
import { placeAlong } from '../../../../../shared/line/placeAlong'
import { type PointOnLine, pointsOnLine } from '../../../../../shared/sketch/pointsOnLine'
import type { PadHandle } from '../../../sketch/pad/padHandle'
import { addPoint } from '../../../store/actions/addPoint'
import { movePoint } from '../../../store/actions/movePoint'
import { removePoint } from '../../../store/actions/removePoint'
import { alongNudged, alongTapped } from './alongTapped'
import { nudgeM } from './nudgeM'
import { type ModeContext, type PadMode, type PadStep, stepOf } from './padMode'

/** A tap further off the line than this is not meant for it, px. */
const NEAR_PX = 64

/** Points laid along the line: tapped, and moved along it. */
export function pointsMode(of: ModeContext): PadMode {
  const { jobLine, say, store, choose } = of
  const { line } = jobLine
  const path = linePath(line)
  const points = pointsOnLine(jobLine)
  const movedTo = (id: string, alongM: number): PadStep | null => {
    const at = points.find(({ point }) => `peg-${point}` === id)
    if (!at) return null
    return stepOf(movePoint, { lineId: jobLine.id, point: { point: at.point, alongM, offsetM: at.offsetM } })
  }
  return {
    hint: say(line.lengthM === null ? 'pad_no_line' : 'pad_tap_point'),
    handles: points.map(
      (each): PadHandle => ({
        id: `peg-${each.point}`,
        at: placeAlong(path, each.alongM, each.offsetM),
        label: pointLabel(of, each),
        shape: 'peg',
        canMove: !of.disabled,
      }),
    ),
    notes: [],
    showsPoints: true,
    onTap: (place, grain) => {
      const isNear = Math.abs(alongPlace(path, place).offsetM) * grain.pxPerM < NEAR_PX
      if (line.lengthM !== null && isNear) putPoint(of, alongTapped(line, place, grain))
    },
    pulled: (id, to, grain) => movedTo(id, alongTapped(line, to, grain)),
    nudged: (id, right, up) => {
      const at = points.find(({ point }) => `peg-${point}` === id)
      return at ? movedTo(id, alongNudged(at.alongM, (right + up) * nudgeM(of.units))) : null
    },
    remove: (id) => {
      const at = points.find(({ point }) => `peg-${point}` === id)
      if (!at || at.clipCount > 0) return
      store.dispatch(removePoint, { lineId: jobLine.id, point: at.point })
      choose(null)
    },
  }
}

/** One more point, with the next number. */
export function putPoint({ jobLine, store, choose }: ModeContext, alongM: number): void {
  const next = pointsOnLine(jobLine).reduce((most, { point }) => Math.max(most, point), 0) + 1
  store.dispatch(addPoint, { lineId: jobLine.id, point: { point: next, alongM, offsetM: 0 } })
  choose(`peg-${next}`)
}

export function pointLabel({ say }: ModeContext, { point, alongM, offsetM, clipCount }: PointOnLine): string {
  const values = { point, along_m: alongM, offset_m: Math.abs(offsetM) }
  const where = offsetM > 0 ? 'sketch_peg_left' : 'sketch_peg_right'
  const words = offsetM === 0 ? say('sketch_peg', values) : say(where, values)
  return clipCount === 0 ? `${words} ${say('pad_no_clips')}` : words
}
