import type { JobClip, JobLine } from '../../../../shared/job/job'
import { sweepSoFar } from '../../../../shared/record/recordInto'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Icon } from '../../look/widgets/Icon'
import { newId } from '../../newId'
import { removeClip } from '../../store/actions/removeClip'
import { restoreClip } from '../../store/actions/restoreClip'
import { useRecorder, useRecorderState } from './useRecorder'

/** The clips of the sweep that is recorded, to take one out; and those taken out, to put one back. */
export function ClipsPart({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const { store } = useApp()
  const recorder = useRecorder()
  useRecorderState((state) => state.sweep)
  const readOnly = useAppState((state) => state.session.readOnly)
  const { clips } = sweepSoFar(line, recorder.sweepName(line))
  const removed = line.removedClips ?? []
  return (
    <>
      {clips.length > 0 && (
        <Disclosure summary={say('heading_recorded')}>
          <ul>
            {clips.map((clip) => (
              <li key={clip.row.file} className="listen-clip">
                <ClipName clip={clip} />
                <Button
                  kind="bare"
                  iconOnly
                  icon={<Icon name="remove" />}
                  disabled={readOnly}
                  onClick={() => store.dispatch(removeClip, { lineId: line.id, clip })}
                >
                  {say('do_remove_clip')}
                </Button>
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
      {removed.length > 0 && (
        <Disclosure summary={say('heading_removed_clips', { count: removed.length })}>
          <ul>
            {removed.map((clip) => (
              <li key={clip.row.file} className="listen-clip">
                <ClipName clip={clip} />
                <Button
                  disabled={readOnly}
                  onClick={() => store.dispatch(restoreClip, { lineId: line.id, clip, sweepId: newId() })}
                >
                  {say('do_restore_clip')}
                </Button>
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
    </>
  )
}

function ClipName({ clip: { row } }: { readonly clip: JobClip }) {
  const { say } = useSay()
  const air = say(row.air === 'on' ? 'label_on' : 'label_off')
  return <span>{say('label_clip_of', { point: row.point, air, take: row.take })}</span>
}
