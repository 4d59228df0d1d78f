import { SHARE_ALL } from '../../../shared/jobfile/sharedJob'
import { useApp, useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Icon } from '../look/widgets/Icon'
import { Progress } from '../look/widgets/Progress'
import { useExport } from './useExport'

/** The open job with its clips and photos as a job file: the command line makes the same report from it. */
export function ExportJobButton() {
  const { say } = useSay()
  const { store } = useApp()
  const job = useAppState((state) => state.job)
  const { progress, start, cancel } = useExport('report')
  if (job === null) return null
  if (progress !== null) return <Progress words={say('export_packing_job')} {...progress} onCancel={cancel} />
  const save = () =>
    start(async (packing) => {
      // Packing is not needed before somebody asks for it, so it is not in the first load.
      const { packJob } = await import('../jobfile/packJob')
      const { zip, name, problems } = await packJob(job, SHARE_ALL, store.get().session.heard, packing)
      return { zip, name, lostCount: problems.length, notWavCount: 0 }
    })
  return (
    <Button icon={<Icon name="save" />} onClick={save}>
      {say('do_export_whole')}
    </Button>
  )
}
