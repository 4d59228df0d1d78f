import type { JobLine } from '../../../shared/job/job'
import { useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Icon } from '../look/widgets/Icon'
import { Progress } from '../look/widgets/Progress'
import { packSweepFolder } from './packSweepFolder'
import { useExport } from './useExport'

/** The open job's line as a sweep folder, packed. */
export function ExportButton({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const job = useAppState((state) => state.job)
  const { progress, start, cancel } = useExport('place')
  if (job === null) return null
  if (progress !== null) return <Progress words={say('export_packing')} {...progress} onCancel={cancel} />
  return (
    <Button icon={<Icon name="save" />} onClick={() => start((packing) => packSweepFolder(job, line, packing))}>
      {say('do_export')}
    </Button>
  )
}
