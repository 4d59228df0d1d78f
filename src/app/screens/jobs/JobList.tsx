import { useState } from 'react'
import { ExportChoice } from '../../export/ExportChoice'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { Notice } from '../../look/widgets/Notice'
import { routeHash } from '../../route'
import type { JobSummary } from '../../store/state'
import { dayOf } from './dayOf'
import './JobList.css'

/** The kept jobs, the last changed first. */
export function JobList() {
  const jobs = useAppState((state) => state.session.jobs)
  return (
    <ul className="job-list">
      {(jobs ?? []).map((job) => (
        <JobEntry key={job.id} job={job} />
      ))}
    </ul>
  )
}

function JobEntry({ job }: { readonly job: JobSummary }) {
  const { say } = useSay()
  const readOnly = useAppState((state) => state.session.readOnly)
  const [asked, setAsked] = useState<'export' | 'delete' | null>(null)
  const toggle = (what: 'export' | 'delete') => setAsked(asked === what ? null : what)
  const { lineCount: lines, pointCount: points } = job
  return (
    <li className="job-entry">
      <a className="job-link" href={routeHash({ screen: 'place', jobId: job.id, lineId: job.firstLineId })}>
        <span className="job-name">{job.name}</span>
        <span className="soft">
          {lines === 1 ? say('label_job_parts', { points }) : say('label_job_lines', { lines, points })}
        </span>
        <time className="soft" dateTime={new Date(job.changedS * 1000).toISOString()}>
          {dayOf(job.changedS)}
        </time>
      </a>
      {points > 0 && (
        <Button
          kind="bare"
          iconOnly
          icon={<Icon name="save" />}
          aria-expanded={asked === 'export'}
          onClick={() => toggle('export')}
        >
          {say('do_export_job', { name: job.name })}
        </Button>
      )}
      <Button
        kind="bare"
        iconOnly
        icon={<Icon name="remove" />}
        disabled={readOnly}
        aria-expanded={asked === 'delete'}
        onClick={() => toggle('delete')}
      >
        {say('do_delete_job', { name: job.name })}
      </Button>
      {asked === 'delete' && <DeleteQuestion job={job} onKeep={() => setAsked(null)} />}
      {asked === 'export' && (
        <div className="job-question">
          <ExportChoice jobId={job.id} />
        </div>
      )}
    </li>
  )
}

function DeleteQuestion({ job, onKeep }: { readonly job: JobSummary; readonly onKeep: () => void }) {
  const { say } = useSay()
  const { deleteJob, dropJob } = useApp()
  const isFull = useAppState(({ session: { saving } }) => saving.state === 'failed' && saving.full)
  return (
    <div className="job-question">
      <Notice
        severity="wrong"
        actions={
          <>
            <Button kind="decision" onClick={() => void deleteJob(job.id)}>
              {say('do_delete')}
            </Button>
            {isFull && <Button onClick={() => void dropJob(job.id)}>{say('do_drop')}</Button>}
            <Button onClick={onKeep}>{say('do_keep')}</Button>
          </>
        }
      >
        <p>{say('jobs_delete_sure', { name: job.name })}</p>
      </Notice>
    </div>
  )
}
