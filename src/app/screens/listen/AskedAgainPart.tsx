import { useMemo } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import { toRecordAgain } from '../../../../shared/opinion/toRecordAgain'
import { isBusy } from '../../../../shared/record/recordingState'
import { pointsOnLine } from '../../../../shared/sketch/pointsOnLine'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { useRecorder, useRecorderState } from './useRecorder'

/** Points that somebody with another ear would record again; a clip made there since settles it. */
export function AskedAgainPart({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const recorder = useRecorder()
  const busy = useRecorderState((state) => isBusy(state.recording.phase))
  const opinions = useAppState((state) => state.job?.opinions)
  const asked = useMemo(() => toRecordAgain(line, opinions ?? []), [line, opinions])
  const points = useMemo(() => pointsOnLine(line), [line])
  if (asked.length === 0) return null
  return (
    <Panel heading={say('heading_asked_again')}>
      <ul className="stack-small">
        {asked.map(({ point, reviewer, note }) => {
          const here = points.find((each) => each.point === point)
          const name = reviewer.trim() === '' ? say('label_nameless') : reviewer
          return (
            <li key={point} className="row">
              <span>
                {note === '' ? say('asked_again', { point, name }) : say('asked_again_why', { point, name, note })}
              </span>
              {here !== undefined && (
                <Button disabled={busy} onClick={() => recorder.choose(here)}>
                  {say('do_record_again_at', { point })}
                </Button>
              )}
            </li>
          )
        })}
      </ul>
    </Panel>
  )
}
