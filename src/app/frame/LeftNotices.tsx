import { Button } from '../look/widgets/Button'
import { Notice } from '../look/widgets/Notice'
import type { LeftRecording } from '../store/state'
import { useApp, useAppState } from './useApp'
import { useSay } from './useSay'

/** Clips that were cut off when the app ended, with the choice to keep them. */
export function LeftNotices() {
  const left = useAppState((state) => state.session.left)
  const readOnly = useAppState((state) => state.session.readOnly)
  if (readOnly) return null
  return left.map((recording) => <LeftNotice key={recording.id} recording={recording} />)
}

function LeftNotice({ recording }: { readonly recording: LeftRecording }) {
  const { say } = useSay()
  const { left } = useApp()
  const jobs = useAppState((state) => state.session.jobs)
  const { id, jobId, point, air, lengthS } = recording
  const name = jobs?.find((job) => job.id === jobId)?.name ?? null
  const values = { point, air: say(air === 'on' ? 'label_on' : 'label_off'), length_s: lengthS }
  return (
    <Notice
      severity="odd"
      actions={
        <>
          {name !== null && (
            <Button kind="decision" onClick={() => void left.keep(id)}>
              {say('do_keep_left')}
            </Button>
          )}
          <Button onClick={() => void left.drop(id)}>{say('do_drop_left')}</Button>
        </>
      }
    >
      <p>{name === null ? say('left_no_job', { length_s: lengthS }) : say('left_found', { ...values, name })}</p>
    </Notice>
  )
}
