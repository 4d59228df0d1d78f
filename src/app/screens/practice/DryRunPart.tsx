import { useEffect, useState } from 'react'
import type { Job, JobLine } from '../../../../shared/job/job'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { goTo } from '../../route'
import { loadJob } from '../../storage/jobs'
import type { Practice } from './usePractice'

/** The whole job once, on the real screens: what is done is seen from the job itself. */
export function DryRunPart({ practice }: { readonly practice: Practice }) {
  const { say } = useSay()
  const { opener, store } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const job = useDryJob(practice.dryJobId)
  const line = job?.lines[0] ?? null
  const open = async () => {
    await opener.demo()
    const opened = store.get().job
    if (opened === null) return
    practice.dryRun(opened.id)
    goTo({ screen: 'practice', jobId: null, lineId: null })
  }
  return (
    <Panel heading={say('heading_dry_run')}>
      <p>{say('practice_dry_why')}</p>
      {job !== null && line !== null && (
        <ol className="practice-steps">
          {STEPS.map(({ name, about, screen, words, isDone }, i) => (
            <li key={name} className="practice-step">
              <h3>
                {say('label_dry_step', { number: i + 1, step: say(name) })}
                <span className="soft"> · {isDone(line) ? say('label_done') : say('label_to_do')}</span>
              </h3>
              <p>{say(about)}</p>
              <Button onClick={() => goTo({ screen, jobId: job.id, lineId: line.id })}>
                {say('do_dry_go', { screen: say(words) })}
              </Button>
            </li>
          ))}
        </ol>
      )}
      <Button disabled={readOnly} onClick={() => void open()}>
        {job === null ? say('do_dry_start') : say('do_dry_again')}
      </Button>
    </Panel>
  )
}

const FEWEST_READINGS = 6

const STEPS = [
  {
    name: 'label_dry_complaint',
    about: 'dry_complaint',
    screen: 'pressure',
    words: 'label_pressure_screen',
    isDone: ({ complaint }: JobLine) => (complaint?.said ?? '') !== '',
  },
  {
    name: 'label_dry_test',
    about: 'dry_test',
    screen: 'pressure',
    words: 'label_pressure_screen',
    isDone: ({ pressureTests = [] }: JobLine) =>
      pressureTests.some(({ readings }) => readings.length >= FEWEST_READINGS),
  },
  {
    name: 'label_dry_line',
    about: 'dry_line',
    screen: 'line',
    words: 'label_line',
    isDone: ({ signs = [] }: JobLine) => signs.length > 0,
  },
  {
    name: 'label_dry_place',
    about: 'dry_place',
    screen: 'place',
    words: 'label_place',
    isDone: ({ confirmations }: JobLine) => confirmations.length > 0,
  },
  {
    name: 'label_dry_found',
    about: 'dry_found',
    screen: 'mend',
    words: 'label_mend',
    isDone: ({ found = [] }: JobLine) => found.length > 0,
  },
  {
    name: 'label_dry_mend',
    about: 'dry_mend',
    screen: 'mend',
    words: 'label_mend',
    isDone: ({ pressureTests = [] }: JobLine) => pressureTests.some(({ kept }) => kept?.verdict === 'holds'),
  },
  {
    name: 'label_dry_report',
    about: 'dry_report',
    screen: 'report',
    words: 'label_report',
    isDone: ({ mend }: JobLine) => typeof mend?.closedS === 'number',
  },
] as const

function useDryJob(jobId: string | null): Job | null {
  const { database } = useApp()
  const shown = useAppState((state) => state.job)
  const [kept, setKept] = useState<Job | null>(null)
  useEffect(() => {
    if (jobId === null) return
    void loadJob(database, jobId).then(setKept, () => setKept(null))
  }, [database, jobId])
  if (jobId === null) return null
  return shown?.id === jobId ? shown : kept?.id === jobId ? kept : null
}
