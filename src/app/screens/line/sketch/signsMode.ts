import { alongPlace } from '../../../../../shared/line/alongPlace'
import type { SketchPlace } from '../../../../../shared/line/line'
import { linePath } from '../../../../../shared/line/linePath'
import { placeAlong } from '../../../../../shared/line/placeAlong'
import { newId } from '../../../newId'
import type { PadHandle } from '../../../sketch/pad/padHandle'
import { SIGN_WORDS } from '../../../sketch/signWords'
import { changeSign } from '../../../store/actions/changeSign'
import { pinSign } from '../../../store/actions/pinSign'
import { removeSign } from '../../../store/actions/removeSign'
import { nudgeM } from './nudgeM'
import { type ModeContext, type PadMode, type PadStep, stepOf } from './padMode'

/** Signs pinned where they were seen or heard. */
export function signsMode(of: ModeContext): PadMode {
  const { jobLine, say, store, choose } = of
  const { signs = [], line } = jobLine
  const path = linePath(line)
  const movedTo = (id: string, place: SketchPlace, stepM: number): PadStep | null => {
    const sign = signs.find((each) => `sign-${each.id}` === id)
    return sign ? stepOf(changeSign, { lineId: jobLine.id, sign: { ...sign, ...besideLine(of, place, stepM) } }) : null
  }
  return {
    hint: say(line.lengthM === null ? 'pad_no_line' : 'pad_tap_sign'),
    handles: signs.map(
      ({ id, kind, alongM, offsetM }): PadHandle => ({
        id: `sign-${id}`,
        at: placeAlong(path, alongM, offsetM),
        label: say('label_noise_line', { kind: say(SIGN_WORDS[kind]), at_m: alongM }),
        shape: 'ring',
        canMove: !of.disabled,
      }),
    ),
    notes: [],
    showsPoints: true,
    onTap: (place, { stepM }) => {
      if (line.lengthM !== null) addSign(of, besideLine(of, place, stepM))
    },
    pulled: (id, to, { stepM }) => movedTo(id, to, stepM),
    nudged: (id, right, up) => {
      const sign = signs.find((each) => `sign-${each.id}` === id)
      if (!sign) return null
      const { xM, yM } = placeAlong(path, sign.alongM, sign.offsetM)
      const byM = nudgeM(of.units)
      return movedTo(id, { xM: xM + right * byM, yM: yM + up * byM }, byM / 10)
    },
    remove: (id) => {
      store.dispatch(removeSign, { lineId: jobLine.id, signId: id.replace(/^sign-/, '') })
      choose(null)
    },
  }
}

/** Pins one more of the chosen kind. */
export function addSign(
  { jobLine, store, choices, choose }: ModeContext,
  where: { readonly alongM: number; readonly offsetM: number },
): void {
  const id = newId()
  store.dispatch(pinSign, { lineId: jobLine.id, sign: { id, kind: choices.sign, ...where, note: '' } })
  choose(`sign-${id}`)
}

function besideLine({ jobLine }: ModeContext, place: SketchPlace, stepM: number) {
  const { alongM, offsetM } = alongPlace(linePath(jobLine.line), place)
  const rounded = (m: number) => Number((Math.round(m / stepM) * stepM).toFixed(6)) + 0
  return { alongM: rounded(alongM), offsetM: rounded(offsetM) }
}
