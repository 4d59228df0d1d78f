import type { Stretch } from '../../../../../shared/line/line'
import { linePath } from '../../../../../shared/line/linePath'
import { placeAlong } from '../../../../../shared/line/placeAlong'
import { stretchesWith } from '../../../../../shared/sketch/stretchesWith'
import type { PadHandle } from '../../../sketch/pad/padHandle'
import { changeStretches } from '../../../store/actions/changeStretches'
import { COVER_WORDS } from '../kindWords'
import { alongNudged, alongTapped } from './alongTapped'
import { nudgeM } from './nudgeM'
import { type ModeContext, type PadMode, type PadStep, stepOf } from './padMode'

/** A stretch is not shorter than this, m. */
const LEAST_M = 0.05

/** Covers laid by two taps on the line; their ends are pulled. */
export function groundMode(of: ModeContext): PadMode {
  const { jobLine, say, store, choices, change, choose } = of
  const { stretches, lengthM } = jobLine.line
  const path = linePath(jobLine.line)
  const moved = (id: string, alongM: number): PadStep | null => {
    const end = endOf(id)
    const stretch = end && stretches[end.index]
    if (!end || !stretch || lengthM === null) return null
    const next = { ...stretch, [end.key]: withinNeighbours(stretches, end, alongM, lengthM) }
    return stepOf(changeStretches, { lineId: jobLine.id, stretches: stretches.with(end.index, next) })
  }
  return {
    hint: say(lengthM === null ? 'pad_no_line' : choices.fromM === null ? 'pad_tap_from' : 'pad_tap_to'),
    handles: stretches.flatMap((stretch, i) => stretchHandles(of, stretch, i)),
    notes: choices.fromM === null ? [] : [{ kind: 'dot' as const, id: 'from', at: placeAlong(path, choices.fromM) }],
    showsPoints: false,
    onTap: (place, grain) => {
      if (lengthM === null) return
      const atM = Math.min(Math.max(alongTapped(jobLine.line, place, grain), 0), lengthM)
      const { fromM } = choices
      if (fromM === null) return change({ fromM: atM })
      if (Math.abs(atM - fromM) < LEAST_M) return
      layCover(of, Math.min(fromM, atM), Math.max(fromM, atM))
    },
    pulled: (id, to, grain) => moved(id, alongTapped(jobLine.line, to, grain)),
    nudged: (id, right, up) => {
      const end = endOf(id)
      const stretch = end && stretches[end.index]
      return stretch ? moved(id, alongNudged(stretch[end.key], (right + up) * nudgeM(of.units))) : null
    },
    remove: (id) => {
      const index = stretchNumber(id)
      if (index === null) return
      store.dispatch(changeStretches, { lineId: jobLine.id, stretches: stretches.toSpliced(index, 1) })
      store.closeStep()
      choose(null)
    },
  }
}

/** Lays the chosen cover over a part of the line, and chooses it. */
export function layCover({ jobLine, store, choices, change, choose }: ModeContext, fromM: number, toM: number): void {
  const laid: Stretch = { fromM, toM, cover: choices.cover, depthM: null, digCostPerM: null }
  const stretches = stretchesWith(jobLine.line.stretches, laid)
  store.dispatch(changeStretches, { lineId: jobLine.id, stretches })
  store.closeStep()
  change({ fromM: null })
  choose(`stretch-${stretches.indexOf(laid)}`)
}

/** Number of the stretch that a handle is of, in the middle or at an end; `null` for any other handle. */
export function stretchNumber(id: string | null): number | null {
  const [, number] = /^(?:stretch|from|to)-(\d+)$/.exec(id ?? '') ?? []
  return number === undefined ? null : Number(number)
}

interface StretchEnd {
  readonly key: 'fromM' | 'toM'
  readonly index: number
}

function endOf(id: string): StretchEnd | null {
  const [, end, number] = /^(from|to)-(\d+)$/.exec(id) ?? []
  return end === undefined ? null : { key: `${end}M` as StretchEnd['key'], index: Number(number) }
}

/** An end does not go over its own other end, nor into the next stretch. */
function withinNeighbours(
  stretches: readonly Stretch[],
  { key, index }: StretchEnd,
  alongM: number,
  lengthM: number,
): number {
  const own = stretches[index]!
  const others = stretches.filter((_, i) => i !== index)
  if (key === 'fromM') {
    const low = others.reduce((most, { toM }) => (toM <= own.fromM + 1e-9 ? Math.max(most, toM) : most), 0)
    return Math.min(Math.max(alongM, low), own.toM - LEAST_M)
  }
  const high = others.reduce((least, { fromM }) => (fromM >= own.toM - 1e-9 ? Math.min(least, fromM) : least), lengthM)
  return Math.max(Math.min(alongM, high), own.fromM + LEAST_M)
}

function stretchHandles({ jobLine, say, chosenId, disabled }: ModeContext, stretch: Stretch, i: number): PadHandle[] {
  const { fromM, toM, cover } = stretch
  const path = linePath(jobLine.line)
  const middle: PadHandle = {
    id: `stretch-${i}`,
    at: placeAlong(path, (fromM + toM) / 2),
    label: say('label_stretch_line', { cover: say(COVER_WORDS[cover]), from_m: fromM, to_m: toM }),
    shape: 'ring',
    canMove: false,
  }
  if (stretchNumber(chosenId) !== i) return [middle]
  const end = (id: string, alongM: number, label: string): PadHandle => ({
    id,
    at: placeAlong(path, alongM),
    label,
    shape: 'bar',
    canMove: !disabled,
  })
  return [
    middle,
    end(`from-${i}`, fromM, say('label_pad_from', { cover: say(COVER_WORDS[cover]), at_m: fromM })),
    end(`to-${i}`, toM, say('label_pad_to', { cover: say(COVER_WORDS[cover]), at_m: toM })),
  ]
}
