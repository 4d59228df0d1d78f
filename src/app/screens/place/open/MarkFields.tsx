import { useState } from 'react'
import { type DigMark, MOST_MARK_NAME } from '../../../../../shared/job/digging'
import type { JobLine } from '../../../../../shared/job/job'
import { type MarkPlace, markPlace, sideOf } from '../../../../../shared/job/markPlace'
import { linePath } from '../../../../../shared/line/linePath'
import type { SketchPoint } from '../../../../../shared/sketch/sketchPoint'
import { type Say, useSay } from '../../../frame/useSay'
import { Button } from '../../../look/widgets/Button'
import { Icon } from '../../../look/widgets/Icon'
import { NumberField } from '../../../look/widgets/NumberField'
import { SelectField } from '../../../look/widgets/SelectField'
import { TextField } from '../../../look/widgets/TextField'

interface MarkFieldsProps {
  readonly letter: string
  /** `null`: not put yet. */
  readonly mark: DigMark | null
  readonly canPut: boolean
  readonly line: JobLine
  readonly points: readonly SketchPoint[]
  readonly disabled: boolean
  readonly onPut: () => void
  /** @param typing What of it is typed at; nothing for what is done at once. */
  readonly onChange: (mark: DigMark, typing?: string) => void
  readonly onRemove: () => void
}

/** What a fixed mark is, and its two tapes from the line. */
export function MarkFields(props: MarkFieldsProps) {
  const { say } = useSay()
  const { letter, mark, canPut, disabled, onPut } = props
  if (mark === null) {
    return canPut ? (
      <Button icon={<Icon name="add" />} disabled={disabled} onClick={onPut}>
        {say('do_put_mark', { name: letter })}
      </Button>
    ) : null
  }
  return <Fields {...props} mark={mark} />
}

interface Typed {
  readonly alongM: number
  readonly distanceM: number | null
}

function Fields({ letter, mark, line, points, disabled, onChange, onRemove }: MarkFieldsProps & { mark: DigMark }) {
  const { say } = useSay()
  const places = placesOf(say, line, points)
  const path = linePath(line.line)
  const [typed, setTyped] = useState<readonly [Typed, Typed]>(() => firstTapes(mark, places))
  const found = markPlace(path, mark)
  const putTape = (i: 0 | 1, change: Partial<Typed>) => {
    const next = typed.map((tape, j) => (i === j ? { ...tape, ...change } : tape)) as [Typed, Typed]
    setTyped(next)
    const [first, second] = next
    const { distanceM: firstM } = first
    const { distanceM: secondM } = second
    const tapes =
      firstM === null || secondM === null
        ? null
        : ([
            { alongM: first.alongM, distanceM: firstM },
            { alongM: second.alongM, distanceM: secondM },
          ] as const)
    onChange({ ...mark, tapes }, `tape ${i}`)
  }
  const otherSide = () => {
    const both = mark.tapes && sideOf(path, mark.tapes)
    if (both?.kind !== 'places') return
    const { place } = found
    const isLeft = Math.hypot(both.left.xM - place.xM, both.left.yM - place.yM) < 1e-6
    onChange({ ...mark, place: isLeft ? both.right : both.left })
  }
  return (
    <fieldset className="open-mark" disabled={disabled}>
      <legend>{say('label_mark', { name: letter })}</legend>
      <TextField
        label={say('label_mark_name', { name: letter })}
        value={mark.name}
        mostLength={MOST_MARK_NAME}
        disabled={disabled}
        onChange={(name) => onChange({ ...mark, name }, 'name')}
      />
      {([0, 1] as const).map((i) => (
        <div key={i} className="open-pair">
          <SelectField
            label={say(i === 0 ? 'label_tape_first' : 'label_tape_second')}
            value={String(typed[i].alongM)}
            options={places.map(({ alongM, words }) => ({ value: String(alongM), words }))}
            disabled={disabled}
            onChange={(alongM) => putTape(i, { alongM: Number(alongM) })}
          />
          <NumberField
            label={say('label_tape_length', { place: wordsAt(places, typed[i].alongM), name: letter })}
            value={typed[i].distanceM}
            unit="m"
            least={0}
            most={10_000}
            optional
            disabled={disabled}
            onChange={(distanceM) => putTape(i, { distanceM })}
            onWrong={() => putTape(i, { distanceM: null })}
          />
        </div>
      ))}
      <p className={found.known === 'tapes miss' ? 'field-wrong' : 'soft'}>{saidOf(say, found)}</p>
      <div className="row">
        {found.known === 'taped' && (
          <Button disabled={disabled} onClick={otherSide}>
            {say('do_other_side')}
          </Button>
        )}
        <Button kind="bare" icon={<Icon name="remove" />} disabled={disabled} onClick={onRemove}>
          {say('do_remove_mark', { name: letter })}
        </Button>
      </div>
    </fieldset>
  )
}

interface TapePlace {
  readonly alongM: number
  readonly words: string
}

/** Where a tape can be laid from: numbered points that stand over the line, and its ends. */
function placesOf(say: Say, { line: { lengthM } }: JobLine, points: readonly SketchPoint[]): TapePlace[] {
  const over = points.filter(({ offsetM }) => Math.abs(offsetM) < 0.01)
  const places = [
    ...over.map(({ point, alongM }) => ({ alongM, words: say('label_tape_point', { point }) })),
    { alongM: 0, words: say('label_tape_start') },
    ...(lengthM === null ? [] : [{ alongM: lengthM, words: say('label_tape_end') }]),
  ]
  return places.filter(({ alongM }, i) => places.findIndex((each) => each.alongM === alongM) === i)
}

function wordsAt(places: readonly TapePlace[], alongM: number): string {
  return places.find((place) => place.alongM === alongM)?.words ?? String(alongM)
}

function firstTapes({ tapes }: DigMark, places: readonly TapePlace[]): readonly [Typed, Typed] {
  if (tapes !== null) return tapes
  return [
    { alongM: places[0]!.alongM, distanceM: null },
    { alongM: (places.at(-1) ?? places[0]!).alongM, distanceM: null },
  ]
}

function saidOf(say: Say, { known, gapM }: MarkPlace): string {
  if (known === 'by hand') return say('mark_by_hand')
  if (known === 'taped') return say('mark_taped')
  if (gapM === null) return say('mark_tapes_same')
  return gapM > 0 ? say('mark_tapes_short', { gap_m: gapM }) : say('mark_tapes_long', { gap_m: -gapM })
}
