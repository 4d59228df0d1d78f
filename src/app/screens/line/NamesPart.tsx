import type { JobLine } from '../../../../shared/job/job'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { Panel } from '../../look/widgets/Panel'
import { TextField } from '../../look/widgets/TextField'
import { OpenButtons } from '../../open/OpenButtons'
import { goTo } from '../../route'
import { removeLine } from '../../store/actions/removeLine'
import { renameJob } from '../../store/actions/renameJob'
import { renameLine } from '../../store/actions/renameLine'

export interface NamesPartProps {
  readonly jobLine: JobLine
  readonly disabled: boolean
}

const MOST_NAME = 200 // as the job's reader allows

/** Names of job and line, and the other lines of the job. */
export function NamesPart({ jobLine, disabled }: NamesPartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const job = useAppState((state) => state.job)
  if (job === null) return null
  const other = job.lines.find((line) => line.id !== jobLine.id)
  const remove = () => {
    store.dispatch(removeLine, jobLine.id)
    goTo({ screen: 'line', jobId: job.id, lineId: other!.id })
  }
  const common = { mostLength: MOST_NAME, disabled, onDone: store.closeStep }
  return (
    <Panel heading={say('heading_names')}>
      <TextField
        label={say('label_job_name')}
        value={job.name}
        {...common}
        onChange={(name) => store.dispatch(renameJob, name)}
      />
      <TextField
        label={say('label_line_name')}
        value={jobLine.name}
        {...common}
        onChange={(name) => store.dispatch(renameLine, { lineId: jobLine.id, name })}
      />
      <OpenButtons target={{ kind: 'line' }} />
      {other && (
        <Button icon={<Icon name="remove" />} disabled={disabled} onClick={remove}>
          {say('do_remove_line')}
        </Button>
      )}
    </Panel>
  )
}
