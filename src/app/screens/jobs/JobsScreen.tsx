import { PageNotices } from '../../frame/PageNotices'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { Panel } from '../../look/widgets/Panel'
import { NewerNotice } from '../../offline/NewerNotice'
import { NotSecureNotice } from '../../offline/NotSecureNotice'
import { OfflinePanel } from '../../offline/OfflinePanel'
import { DropArea } from '../../open/DropArea'
import { OpenButtons } from '../../open/OpenButtons'
import { OpeningPanel } from '../../open/OpeningPanel'
import { DeletedJobs } from './DeletedJobs'
import { DevicePanel } from './DevicePanel'
import { JobList } from './JobList'
import './JobsScreen.css'

/** All jobs on this device, and how to get another one. */
export function JobsScreen() {
  const { say } = useSay()
  const { opener, startJob } = useApp()
  const jobs = useAppState((state) => state.session.jobs)
  const isOpening = useAppState((state) => state.session.opening !== null)
  const readOnly = useAppState((state) => state.session.readOnly)
  const isEmpty = jobs !== null && jobs.length === 0
  return (
    <DropArea target={TARGET}>
      <div className="jobs">
        <div className="stack">
          <PageNotices place="jobs" />
          <NotSecureNotice />
          <NewerNotice />
          <OpeningPanel />
          {isEmpty && !isOpening && (
            <div className="jobs-empty">
              <p className="jobs-lead">{say('jobs_empty')}</p>
              <p>{say('jobs_empty_first')}</p>
              <Button kind="main" wide disabled={readOnly} onClick={() => void opener.demo()}>
                {say('do_open_demo')}
              </Button>
              <Button wide icon={<Icon name="add" />} disabled={readOnly} onClick={() => void startJob()}>
                {say('do_new_job')}
              </Button>
            </div>
          )}
          {jobs !== null && !isEmpty && (
            <Button kind="main" icon={<Icon name="add" />} disabled={readOnly} onClick={() => void startJob()}>
              {say('do_new_job')}
            </Button>
          )}
          {!isEmpty && <JobList />}
          <DeletedJobs />
        </div>
        <div className="stack">
          <Panel heading={say('label_open')}>
            <p>{say('jobs_open_how')}</p>
            <p>{say('jobs_open_shared')}</p>
            <OpenButtons target={TARGET} />
            <p className="soft jobs-drop">{say('jobs_drop')}</p>
            {!isEmpty && (
              <Button disabled={readOnly} icon={<Icon name="place" />} onClick={() => void opener.demo()}>
                {say('do_open_demo')}
              </Button>
            )}
          </Panel>
          <OfflinePanel />
          <DevicePanel />
        </div>
      </div>
    </DropArea>
  )
}

const TARGET = { kind: 'job' } as const
