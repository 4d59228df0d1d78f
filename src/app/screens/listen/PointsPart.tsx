import type { JobLine } from '../../../../shared/job/job'
import { type PointState, pointState } from '../../../../shared/record/pointState'
import { sweepSoFar } from '../../../../shared/record/recordInto'
import { isBusy } from '../../../../shared/record/recordingState'
import { pointsOnLine } from '../../../../shared/sketch/pointsOnLine'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'
import { Peg } from '../../look/widgets/Peg'
import { useRecorder, useRecorderState } from './useRecorder'

const STATES = { done: 'label_point_done', half: 'label_point_half', open: 'label_point_open' } as const
const PEGS = { done: 'best', half: 'plain', open: 'silent' } as const satisfies Record<PointState, string>

/** Every point as a peg, in the order of the line: any of them can be the next. */
export function PointsPart({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const recorder = useRecorder()
  const slot = useRecorderState((state) => state.recording.slot)
  const busy = useRecorderState((state) => isBusy(state.recording.phase))
  const sweep = useRecorderState((state) => state.sweep)
  const way = useAppState((state) => state.device.listen.way)
  const points = pointsOnLine(line)
  if (points.length === 0) return null
  const { clips } = sweepSoFar(line, sweep ?? recorder.sweepName(line))
  const states = points.map(({ point }) => pointState(clips, point, way))
  const done = states.filter((state) => state === 'done').length
  return (
    <Panel heading={say('heading_listen_points')}>
      <p className="soft">{say('label_points_done', { done, total: points.length })}</p>
      <ul className="listen-points">
        {points.map((point, i) => {
          const isNext = point.point === slot?.point
          const words = say(STATES[states[i]!], { point: point.point })
          return (
            <li key={point.point}>
              <button
                type="button"
                className="listen-point"
                aria-pressed={isNext}
                aria-label={isNext ? say('label_point_chosen', { state: words }) : words}
                disabled={busy}
                onClick={() => recorder.choose(point)}
              >
                <Peg point={point.point} state={PEGS[states[i]!]} />
              </button>
            </li>
          )
        })}
      </ul>
    </Panel>
  )
}
