import { useState } from 'react'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Disclosure } from '../../look/widgets/Disclosure'
import { Icon } from '../../look/widgets/Icon'
import { Notice } from '../../look/widgets/Notice'
import type { DeletedJob } from '../../store/state'
import { dayOf } from './dayOf'

/** Jobs that were deleted, to be put back or to be deleted for good. */
export function DeletedJobs() {
  const { say } = useSay()
  const deleted = useAppState((state) => state.session.deletedJobs)
  if (deleted.length === 0) return null
  return (
    <Disclosure summary={say('heading_deleted_jobs', { count: deleted.length })}>
      <p className="soft">{say('jobs_deleted_how')}</p>
      <ul className="job-list">
        {deleted.map((job) => (
          <DeletedEntry key={job.id} job={job} />
        ))}
      </ul>
    </Disclosure>
  )
}

function DeletedEntry({ job }: { readonly job: DeletedJob }) {
  const { say } = useSay()
  const { restoreJob } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const [isAsked, setAsked] = useState(false)
  const { id, name, pointCount: points, deletedS } = job
  return (
    <li className="job-entry">
      <div className="job-link">
        <span className="job-name">{name}</span>
        <span className="soft">{say('label_job_parts', { points })}</span>
        <span className="soft">{say('label_deleted_when', { when: dayOf(deletedS) })}</span>
      </div>
      <Button kind="bare" iconOnly icon={<Icon name="undo" />} disabled={readOnly} onClick={() => void restoreJob(id)}>
        {say('do_restore_job', { name })}
      </Button>
      <Button
        kind="bare"
        iconOnly
        icon={<Icon name="remove" />}
        disabled={readOnly}
        aria-expanded={isAsked}
        onClick={() => setAsked(!isAsked)}
      >
        {say('do_drop_job', { name })}
      </Button>
      {isAsked && <DropQuestion job={job} onKeep={() => setAsked(false)} />}
    </li>
  )
}

function DropQuestion({ job, onKeep }: { readonly job: DeletedJob; readonly onKeep: () => void }) {
  const { say } = useSay()
  const { dropJob } = useApp()
  return (
    <div className="job-question">
      <Notice
        severity="wrong"
        actions={
          <>
            <Button kind="decision" onClick={() => void dropJob(job.id)}>
              {say('do_drop')}
            </Button>
            <Button onClick={onKeep}>{say('do_keep')}</Button>
          </>
        }
      >
        <p>{say('jobs_drop_sure', { name: job.name })}</p>
      </Notice>
    </div>
  )
}
