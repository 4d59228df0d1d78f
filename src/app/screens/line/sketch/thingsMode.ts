import type { FittingKind, NoiseKind } from '../../../../../shared/line/line'
import { linePath } from '../../../../../shared/line/linePath'
import { placeAlong } from '../../../../../shared/line/placeAlong'
import type { PadHandle } from '../../../sketch/pad/padHandle'
import { changeFittings } from '../../../store/actions/changeFittings'
import { changeInlet } from '../../../store/actions/changeInlet'
import { changeNoises } from '../../../store/actions/changeNoises'
import { FITTING_WORDS, NOISE_WORDS } from '../kindWords'
import { alongNudged, alongTapped } from './alongTapped'
import { nudgeM } from './nudgeM'
import { type ModeContext, type PadMode, type PadStep, stepOf, type ThingKind } from './padMode'

/** A fitting, the air inlet or a noise on the line. */
export interface Thing {
  readonly id: string
  readonly kind: ThingKind
  readonly atM: number
}

/** Fittings, the air inlet and noises, pinned to the line by a tap. */
export function thingsMode(of: ModeContext): PadMode {
  const { jobLine, say, store, choose } = of
  const path = linePath(jobLine.line)
  const things = thingsOf(of)
  const hasLine = jobLine.line.lengthM !== null
  return {
    hint: say(hasLine ? 'pad_tap_thing' : 'pad_no_line'),
    handles: things.map(
      (thing): PadHandle => ({
        id: thing.id,
        at: placeAlong(path, thing.atM),
        label: say('label_noise_line', { kind: thingWords(of, thing.kind), at_m: thing.atM }),
        shape: 'ring',
        canMove: !of.disabled,
      }),
    ),
    notes: [],
    showsPoints: false,
    onTap: (place, grain) => {
      if (hasLine) addThing(of, alongTapped(jobLine.line, place, grain))
    },
    pulled: (id, to, grain) => thingAt(of, id, alongTapped(jobLine.line, to, grain)),
    nudged: (id, right, up) => {
      const thing = things.find((each) => each.id === id)
      return thing ? thingAt(of, id, alongNudged(thing.atM, (right + up) * nudgeM(of.units))) : null
    },
    remove: (id) => {
      thingAt(of, id, null)?.commit(store)
      store.closeStep()
      choose(null)
    },
  }
}

export function thingsOf({ jobLine: { line } }: Pick<ModeContext, 'jobLine'>): Thing[] {
  return [
    ...line.fittings.map(({ kind, atM }, i): Thing => ({ id: `fitting-${i}`, kind: `fitting ${kind}`, atM })),
    ...(line.airInletM === null ? [] : [{ id: 'inlet', kind: 'inlet' as const, atM: line.airInletM }]),
    ...line.noises.map(({ kind, atM }, i): Thing => ({ id: `noise-${i}`, kind: `noise ${kind}`, atM })),
  ]
}

/** Puts one more of the chosen kind on the line; the air inlet there is one of. */
export function addThing(of: ModeContext, atM: number): void {
  const { jobLine, store, choices, choose } = of
  const { line, id: lineId } = jobLine
  const [group, kind] = choices.thing.split(' ')
  if (group === 'fitting') {
    const fittings = [...line.fittings, { atM, kind: kind as FittingKind }]
    store.dispatch(changeFittings, { lineId, fittings })
    choose(`fitting-${fittings.length - 1}`)
  } else if (group === 'noise') {
    const noises = [...line.noises, { atM, kind: kind as NoiseKind }]
    store.dispatch(changeNoises, { lineId, noises })
    choose(`noise-${noises.length - 1}`)
  } else {
    store.dispatch(changeInlet, { lineId, airInletM: atM })
    choose('inlet')
  }
  store.closeStep()
}

/** A thing put elsewhere along the line; `null` takes it away. */
export function thingAt(
  { jobLine: { line, id: lineId } }: ModeContext,
  id: string,
  atM: number | null,
): PadStep | null {
  if (id === 'inlet') return stepOf(changeInlet, { lineId, airInletM: atM })
  const index = Number(id.split('-')[1])
  const put = <Part extends { readonly atM: number }>(parts: readonly Part[]) =>
    atM === null ? parts.toSpliced(index, 1) : parts.with(index, { ...parts[index]!, atM })
  if (id.startsWith('fitting-') && line.fittings[index]) {
    return stepOf(changeFittings, { lineId, fittings: put(line.fittings) })
  }
  if (id.startsWith('noise-') && line.noises[index]) return stepOf(changeNoises, { lineId, noises: put(line.noises) })
  return null
}

export function thingWords({ say }: Pick<ModeContext, 'say'>, kind: ThingKind): string {
  const [group, word] = kind.split(' ')
  if (group === 'fitting') return say(FITTING_WORDS[word as FittingKind])
  if (group === 'noise') return say('label_noise_named', { kind: say(NOISE_WORDS[word as NoiseKind]) })
  return say('label_thing_inlet')
}
