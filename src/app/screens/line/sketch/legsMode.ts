import { BARE_SITE } from '../../../../../shared/job/site'
import type { SketchPlace } from '../../../../../shared/line/line'
import { lineCorners } from '../../../../../shared/line/lineCorners'
import { lineLegs } from '../../../../../shared/line/lineLegs'
import { movedCorner } from '../../../../../shared/line/movedCorner'
import { snapCorner } from '../../../../../shared/sketch/snapCorner'
import type { PadHandle } from '../../../sketch/pad/padHandle'
import { drawCorners } from '../../../store/actions/drawCorners'
import { placeStart } from '../../../store/actions/placeStart'
import { cornerNumber, cornerWords } from './cornerWords'
import { legNotes } from './legNotes'
import { nudgeM } from './nudgeM'
import { type Grain, type ModeContext, type PadMode, type PadStep, stepOf } from './padMode'

/** Legs by taps: the start, then the end of each leg; corners are pulled. */
export function legsMode(of: ModeContext): PadMode {
  const { jobLine, say, store } = of
  const corners = cornersOf(of)
  const handles = corners.map(
    (at, i): PadHandle => ({
      id: `corner-${i}`,
      at,
      label: cornerWords(of, i, corners.length),
      shape: 'corner',
      canMove: !of.disabled,
    }),
  )
  return {
    hint: say(corners.length === 0 ? 'pad_tap_start' : corners.length === 1 ? 'pad_tap_first' : 'pad_tap_leg'),
    handles,
    notes: legNotes(of, lineCorners(jobLine.line)),
    showsPoints: false,
    onTap: (place, grain) => {
      const put = (step: PadStep) => step.commit(store)
      if (corners.length === 0) put(stepOf(placeStart, { lineId: jobLine.id, startAt: rounded(place, grain.stepM) }))
      else put(drawn(of, [...corners, snapped(of, corners, corners.length, place, grain)])!)
      of.choose(`corner-${corners.length}`)
    },
    pulled: (id, to, grain) => movedTo(of, corners, cornerNumber(id), snapAt(of, corners, cornerNumber(id), to, grain)),
    nudged: (id, right, up) => {
      const [i, byM] = [cornerNumber(id), nudgeM(of.units)]
      const at = corners[i]
      return at ? movedTo(of, corners, i, { xM: at.xM + right * byM, yM: at.yM + up * byM }) : null
    },
    remove: (id) => removeCorner(of, cornerNumber(id)),
  }
}

/** Corners of the line, or its start alone. */
function cornersOf({ jobLine }: ModeContext): readonly SketchPlace[] {
  const corners = lineCorners(jobLine.line)
  const startAt = jobLine.site?.startAt ?? null
  return corners.length > 0 || startAt === null ? corners : [startAt]
}

/** Takes a corner out, the legs before and after it become one; an end goes with its leg. */
export function removeCorner(of: ModeContext, index: number): void {
  const corners = lineCorners(of.jobLine.line)
  if (corners.length < 3 || index < 0 || index >= corners.length) return
  const cornerOf = corners.map((_, i) => (i === index ? null : i < index ? i : i - 1))
  drawn(of, corners.toSpliced(index, 1), cornerOf)?.commit(of.store)
  of.choose(`corner-${Math.max(0, index - 1)}`)
}

/** Puts a corner into the middle of the leg that ends at this one. */
export function splitLeg(of: ModeContext, index: number): void {
  const corners = lineCorners(of.jobLine.line)
  const [from, to] = [corners[index - 1], corners[index]]
  if (!from || !to) return
  const middle = { xM: (from.xM + to.xM) / 2, yM: (from.yM + to.yM) / 2 }
  const cornerOf = corners.map((_, i) => (i < index ? i : i + 1))
  drawn(of, corners.toSpliced(index, 0, middle), cornerOf)?.commit(of.store)
  of.choose(`corner-${index}`)
}

function movedTo(of: ModeContext, corners: readonly SketchPlace[], index: number, to: SketchPlace): PadStep | null {
  if (corners.length === 1) return stepOf(placeStart, { lineId: of.jobLine.id, startAt: to })
  return drawn(of, movedCorner(corners, index, to, of.choices.keepLengths))
}

/** `null` where two corners would come to lie in one place. */
function drawn(
  { jobLine }: ModeContext,
  corners: readonly SketchPlace[],
  cornerOf?: readonly (number | null)[],
): PadStep | null {
  const legs = lineLegs({ vertices: corners, lengthM: null })
  if (legs.length < corners.length - 1 || legs.some(({ lengthM }) => lengthM < 0.01)) return null
  return stepOf(drawCorners, { lineId: jobLine.id, corners, ...(cornerOf && { cornerOf }) })
}

/** A pulled start without a leg follows the grid, all else its neighbours. */
function snapAt(of: ModeContext, corners: readonly SketchPlace[], index: number, place: SketchPlace, grain: Grain) {
  return corners.length === 1 ? rounded(place, grain.stepM) : snapped(of, corners, index, place, grain)
}

function snapped(
  { jobLine }: ModeContext,
  corners: readonly SketchPlace[],
  index: number,
  place: SketchPlace,
  { stepM, reachM }: Grain,
): SketchPlace {
  const { snapDeg, photo } = jobLine.site ?? BARE_SITE
  return snapCorner({
    place,
    before: corners.slice(Math.max(0, index - 2), index).reverse(),
    after: corners.slice(index + 1, index + 3),
    turnsDeg: snapDeg === null ? [90] : [90, snapDeg],
    axes: photo === null,
    reachM,
    stepM,
  }).place
}

function rounded({ xM, yM }: SketchPlace, stepM: number): SketchPlace {
  return { xM: Math.round(xM / stepM) * stepM, yM: Math.round(yM / stepM) * stepM }
}
