import { useEffect, useState } from 'react'
import type { Job } from '../../../shared/job/job'
import { useApp, useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Icon } from '../look/widgets/Icon'
import { Progress } from '../look/widgets/Progress'
import { loadJob } from '../storage/jobs'
import { packSweepFolder } from './packSweepFolder'
import { useExport } from './useExport'

/** The lines of a kept job, each to be packed as a sweep folder. */
export function ExportChoice({ jobId }: { readonly jobId: string }) {
  const { say } = useSay()
  const { database } = useApp()
  const open = useAppState((state) => (state.job?.id === jobId ? state.job : null))
  const [kept, setKept] = useState<Job | null>(null)
  const { progress, start, cancel } = useExport('jobs')
  useEffect(() => {
    void loadJob(database, jobId).then(setKept, () => undefined) // a job that cannot be read says so when it is opened
  }, [database, jobId])
  const job = open ?? kept
  if (job === null) return null
  if (progress !== null) return <Progress words={say('export_packing')} {...progress} onCancel={cancel} />
  return (
    <div className="stack-small">
      <p>{say('export_what')}</p>
      <div className="row">
        {job.lines
          .filter(({ sweeps }) => sweeps.some(({ clips }) => clips.length > 0))
          .map((line) => (
            <Button
              key={line.id}
              icon={<Icon name="save" />}
              onClick={() => start((packing) => packSweepFolder(job, line, packing))}
            >
              {say('do_export_line', { name: line.name })}
            </Button>
          ))}
      </div>
    </div>
  )
}
