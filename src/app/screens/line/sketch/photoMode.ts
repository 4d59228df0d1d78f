import type { SketchPlace } from '../../../../../shared/line/line'
import type { PadHandle } from '../../../sketch/pad/padHandle'
import { movePhoto } from '../../../store/actions/movePhoto'
import { nudgeM } from './nudgeM'
import { type ModeContext, type PadMode, type PadStep, stepOf } from './padMode'

/** The photo under the sketch: two taps a known distance apart set its scale; it is pulled by its middle. */
export function photoMode(of: ModeContext): PadMode {
  const { jobLine, say, choices, change } = of
  const photo = jobLine.site?.photo ?? null
  const { scale } = choices
  const movedTo = (id: string, to: SketchPlace): PadStep | null => {
    if (id === 'photo' && photo) return stepOf(movePhoto, { lineId: jobLine.id, centre: to })
    const index = Number(id.split('-')[1])
    if (!scale[index]) return null
    return { preview: (state) => state, commit: () => change({ scale: scale.with(index, to) }) }
  }
  const handles: PadHandle[] = [
    ...(photo
      ? [{ id: 'photo', at: photo.centre, label: say('label_pad_photo'), shape: 'bar' as const, canMove: !of.disabled }]
      : []),
    ...scale.map(
      (at, i): PadHandle => ({
        id: `scale-${i}`,
        at,
        label: say('label_pad_scale_mark', { number: i + 1 }),
        shape: 'cross',
        canMove: !of.disabled,
      }),
    ),
  ]
  const step = photo === null ? 'pad_no_photo' : SCALE_HINTS[scale.length]!
  return {
    hint: say(step),
    handles,
    notes: scale.length < 2 ? [] : [{ kind: 'line', id: 'measure', from: scale[0]!, to: scale[1]! }],
    showsPoints: false,
    onTap: (place) => {
      if (photo && !of.disabled) change({ scale: scale.length < 2 ? [...scale, place] : [place] })
    },
    pulled: (id, to) => movedTo(id, to),
    nudged: (id, right, up) => {
      const at = handles.find((handle) => handle.id === id)?.at
      const byM = nudgeM(of.units)
      return at ? movedTo(id, { xM: at.xM + right * byM, yM: at.yM + up * byM }) : null
    },
    remove: (id) => {
      if (id.startsWith('scale-')) change({ scale: [] })
    },
  }
}

const SCALE_HINTS = ['pad_tap_scale', 'pad_tap_scale_other', 'pad_type_scale'] as const
