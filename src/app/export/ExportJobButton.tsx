import { useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Icon } from '../look/widgets/Icon'
import { Progress } from '../look/widgets/Progress'
import { packJobFolder } from './packJobFolder'
import { useExport } from './useExport'

/** The open job with its clips and photos as a folder, packed: the command line makes the same report from it. */
export function ExportJobButton() {
  const { say } = useSay()
  const job = useAppState((state) => state.job)
  const { progress, start, cancel } = useExport('report')
  if (job === null) return null
  if (progress !== null) return <Progress words={say('export_packing')} {...progress} onCancel={cancel} />
  return (
    <Button icon={<Icon name="save" />} onClick={() => start((packing) => packJobFolder(job, packing))}>
      {say('do_export_whole')}
    </Button>
  )
}
