import { useState } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import { pointsOnLine } from '../../../../shared/sketch/pointsOnLine'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Disclosure } from '../../look/widgets/Disclosure'
import { NumberField } from '../../look/widgets/NumberField'
import { addPoint } from '../../store/actions/addPoint'
import { useRecorder } from './useRecorder'

const ALONG_LIMIT_M = 10_000

/** One more place to listen at: where the answer asks for it, or as typed. */
export function MorePointPart({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const { store } = useApp()
  const recorder = useRecorder()
  const readOnly = useAppState((state) => state.session.readOnly)
  const advice = useAppState((state) => state.session.answers[line.id]?.answer.listenNext[0] ?? null)
  const points = pointsOnLine(line)
  const free = points.reduce((highest, { point }) => Math.max(highest, point), 0) + 1
  const add = (point: number, alongM: number, offsetM: number) => {
    store.dispatch(addPoint, { lineId: line.id, point: { point, alongM, offsetM } })
    recorder.choose({ point, alongM, offsetM })
  }
  return (
    <>
      {advice !== null && !points.some(({ alongM }) => Math.abs(alongM - advice.alongM) < 0.01) && (
        <div className="listen-advice">
          <p>{say('more_point_advised', { along_m: advice.alongM })}</p>
          <Button disabled={readOnly} onClick={() => add(free, advice.alongM, advice.offsetM)}>
            {say('do_take_advice', { point: free })}
          </Button>
        </div>
      )}
      <Disclosure summary={say('heading_more_point')} open={points.length === 0}>
        <TypedPoint key={free} taken={points.map(({ point }) => point)} free={free} onAdd={add} disabled={readOnly} />
      </Disclosure>
    </>
  )
}

interface TypedPointProps {
  readonly taken: readonly number[]
  readonly free: number
  readonly disabled: boolean
  readonly onAdd: (point: number, alongM: number, offsetM: number) => void
}

function TypedPoint({ taken, free, disabled, onAdd }: TypedPointProps) {
  const { say } = useSay()
  const [point, setPoint] = useState<number | null>(free)
  const [alongM, setAlongM] = useState<number | null>(null)
  const [offsetM, setOffsetM] = useState<number | null>(0)
  const isTaken = point !== null && taken.includes(point)
  const isWhole = point !== null && Number.isInteger(point)
  return (
    <>
      <NumberField label={say('label_more_number')} value={point} unit="" least={1} most={9999} onChange={setPoint} />
      {isTaken && <p className="field-wrong">{say('more_point_taken', { point })}</p>}
      <NumberField
        label={say('label_more_along')}
        value={alongM}
        unit="m"
        least={-ALONG_LIMIT_M}
        most={ALONG_LIMIT_M}
        onChange={setAlongM}
      />
      <NumberField
        label={say('label_more_offset')}
        value={offsetM}
        unit="m"
        least={-100}
        most={100}
        onChange={setOffsetM}
      />
      <Button
        disabled={disabled || isTaken || !isWhole || alongM === null || offsetM === null}
        onClick={() => onAdd(point!, alongM!, offsetM!)}
      >
        {say('do_add_point')}
      </Button>
    </>
  )
}
