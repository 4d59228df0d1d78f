import { useState } from 'react'
import { ExportChoice } from '../../export/ExportChoice'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { Notice } from '../../look/widgets/Notice'
import { TextField } from '../../look/widgets/TextField'
import { routeHash } from '../../route'
import { reviewKey } from '../../store/review'
import type { JobSummary } from '../../store/state'
import { ageOf } from './ageOf'
import { dayOf } from './dayOf'
import './JobList.css'

/** From so many jobs on they are searched rather than looked through. Chosen: two screens of a phone. */
const MANY = 8

/** The kept jobs, the last changed first; many can be searched by name and by how far they are. */
export function JobList() {
  const { say } = useSay()
  const { nowS } = useApp()
  const jobs = useAppState((state) => state.session.jobs)
  const [sought, setSought] = useState('')
  const [now] = useState(nowS) // a list that is looked at need not tell minutes
  const words = sought.toLowerCase().split(/\s+/).filter(Boolean)
  const shown = (jobs ?? []).filter((job) => {
    const text = `${job.name} ${job.stage === undefined ? '' : say(STAGE_WORDS[job.stage])}`.toLowerCase()
    return words.every((word) => text.includes(word))
  })
  return (
    <>
      {(jobs ?? []).length >= MANY && (
        <TextField label={say('label_search_jobs')} value={sought} mostLength={100} onChange={setSought} />
      )}
      {words.length > 0 && (
        <p role="status">{say('jobs_found', { count: shown.length, total: (jobs ?? []).length })}</p>
      )}
      <ul className="job-list">
        {shown.map((job) => (
          <JobEntry key={job.id} job={job} nowS={now} />
        ))}
      </ul>
    </>
  )
}

const STAGE_WORDS = {
  begun: 'label_stage_begun',
  heard: 'label_stage_heard',
  confirmed: 'label_stage_confirmed',
  found: 'label_stage_found',
  closed: 'label_stage_closed',
} as const

function JobEntry({ job, nowS }: { readonly job: JobSummary; readonly nowS: number }) {
  const { say } = useSay()
  const isBlind = useAppState(
    ({ session }) => session.reviews[reviewKey(job.id, job.firstLineId ?? '')]?.blind === true,
  )
  const readOnly = useAppState((state) => state.session.readOnly)
  const [asked, setAsked] = useState<'export' | 'delete' | null>(null)
  const toggle = (what: 'export' | 'delete') => setAsked(asked === what ? null : what)
  const { lineCount: lines, pointCount: points, stage, opinionCount = 0 } = job
  return (
    <li className="job-entry">
      <a
        className="job-link"
        href={routeHash({ screen: isBlind ? 'secondear' : 'place', jobId: job.id, lineId: job.firstLineId })}
      >
        <span className="job-name">{job.name === '' ? say('label_job_nameless', { id: job.id }) : job.name}</span>
        {isBlind && <span className="job-stage">{say('label_to_be_heard')}</span>}
        {!isBlind && stage !== undefined && <span className="job-stage">{say(STAGE_WORDS[stage])}</span>}
        <span className="soft">
          {lines === 1 ? say('label_job_parts', { points }) : say('label_job_lines', { lines, points })}
        </span>
        <time className="soft" dateTime={new Date(job.changedS * 1000).toISOString()}>
          {dayOf(job.changedS)}, {ageOf(job.changedS, nowS)}
        </time>
        {opinionCount > 0 && <span className="soft">{say('label_job_opinions', { count: opinionCount })}</span>}
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
