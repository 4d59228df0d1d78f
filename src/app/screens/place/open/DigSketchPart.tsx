import { useCallback, useMemo, useState } from 'react'
import { type Digging, type DigMark, MOST_MARKS } from '../../../../../shared/job/digging'
import type { JobLine } from '../../../../../shared/job/job'
import type { SketchPlace } from '../../../../../shared/line/line'
import { linePath } from '../../../../../shared/line/linePath'
import type { LocateAnswer } from '../../../../../shared/locate/answer'
import { diggingOf } from '../../../../../shared/sketch/diggingOf'
import { lineSketch } from '../../../../../shared/sketch/lineSketch'
import { sketchPoints } from '../../../../../shared/sketch/sketchPoint'
import { useApp } from '../../../frame/useApp'
import { useSay } from '../../../frame/useSay'
import { Disclosure } from '../../../look/widgets/Disclosure'
import { Panel } from '../../../look/widgets/Panel'
import { newId } from '../../../newId'
import { Pad } from '../../../sketch/pad/Pad'
import type { PadHandle } from '../../../sketch/pad/padHandle'
import { changeDigging } from '../../../store/actions/changeDigging'
import { DimensionsTable } from './DimensionsTable'
import { MarkFields } from './MarkFields'

interface DigSketchPartProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
  readonly digging: Digging
  readonly disabled: boolean
}

/** The place to dig by tape from two marks that stay where they are. */
export function DigSketchPart(props: DigSketchPartProps) {
  const { say } = useSay()
  return (
    <Panel heading={say('label_dig_sketch')} headingUnseen>
      <Disclosure summary={say('label_dig_sketch')}>{() => <DigSketch {...props} />}</Disclosure>
    </Panel>
  )
}

const LETTERS = ['A', 'B'] as const
const NUDGE_M = 0.05

function DigSketch({ line, answer, digging, disabled }: DigSketchPartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const [chosenId, setChosenId] = useState<string | null>(null)
  const [source] = answer.sources
  const path = useMemo(() => linePath(line.line), [line.line])
  const drawn = useMemo(() => diggingOf(line.line, source, digging), [line.line, source, digging])
  const points = useMemo(
    () =>
      sketchPoints(
        line.sweeps.flatMap(({ clips }) => clips.map(({ row }) => row)),
        answer,
      ),
    [line.sweeps, answer],
  )
  const draw = useCallback(
    (pxPerM: number) =>
      lineSketch({
        line: line.line,
        points,
        answer,
        chosenPoint: null,
        isConfirmed: true,
        pxPerM,
        digging: drawn,
        ...(line.site && { ends: line.site }),
      }),
    [line.line, line.site, points, answer, drawn],
  )
  const { marks } = digging
  const put = (next: readonly DigMark[], typing?: string) =>
    store.dispatch(changeDigging, { lineId: line.id, change: { marks: next }, ...(typing !== undefined && { typing }) })
  const move = (id: string, place: SketchPlace) =>
    put(
      marks.map((mark) => (mark.id === id ? { ...mark, place } : mark)),
      id,
    )
  const add = (place: SketchPlace) => {
    const free = LETTERS.find((letter) => marks.every(({ name }) => !name.startsWith(letter))) ?? LETTERS[marks.length]!
    const mark = { id: newId(), name: free, place, tapes: null }
    put([...marks, mark])
    store.closeStep()
    setChosenId(mark.id)
  }
  const handles = drawn.marks.map(
    ({ id, name, place }, i): PadHandle => ({
      id,
      at: place,
      label: say('label_mark', { name }),
      shape: 'ring',
      canMove: !disabled && marks[i]!.tapes === null,
    }),
  )
  const remove = (id: string) => {
    put(marks.filter((mark) => mark.id !== id))
    store.closeStep()
    setChosenId(null)
  }
  const corners = Array.from(path.xM, (xM, i) => ({ xM, yM: path.yM[i]! }))
  return (
    <div className="stack">
      <p className="soft">{say('dig_sketch_why')}</p>
      <Pad
        draw={draw}
        places={[...corners, ...drawn.marks.map(({ place }) => place)]}
        handles={handles}
        notes={[]}
        photo={null}
        photoUrl={null}
        chosenId={chosenId}
        onTap={(place) => !disabled && marks.length < MOST_MARKS && add(place)}
        onChoose={setChosenId}
        onPull={move}
        onDrop={(id, to) => {
          move(id, to)
          store.closeStep()
        }}
        onLetGo={store.closeStep}
        onNudge={(id, right, up) => {
          const mark = marks.find((each) => each.id === id)
          if (disabled || mark === undefined || mark.tapes !== null) return
          move(id, { xM: mark.place.xM + right * NUDGE_M, yM: mark.place.yM + up * NUDGE_M })
        }}
        onRemove={(id) => !disabled && remove(id)}
        onLeave={store.closeStep}
      />
      {LETTERS.map((letter, i) => (
        <MarkFields
          key={marks[i]?.id ?? letter}
          letter={letter}
          mark={marks[i] ?? null}
          canPut={i === marks.length}
          line={line}
          points={points}
          disabled={disabled}
          onPut={() => add(besideLine(path, i))}
          onChange={(changed, typing) => {
            put(
              marks.map((mark) => (mark.id === changed.id ? changed : mark)),
              typing === undefined ? undefined : `${changed.id} ${typing}`,
            )
            if (typing === undefined) store.closeStep()
          }}
          onRemove={() => marks[i] && remove(marks[i].id)}
        />
      ))}
      <DimensionsTable drawn={drawn} />
    </div>
  )
}

/** Where a mark is put that nobody tapped: beside the start, or beside the end; it is pulled or taped from there. */
function besideLine({ xM, yM }: ReturnType<typeof linePath>, i: number): SketchPlace {
  const at = i === 0 ? 0 : xM.length - 1
  return { xM: xM[at]!, yM: yM[at]! + 2 }
}
