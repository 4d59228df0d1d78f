import type { JobLine } from '../../../../shared/job/job'
import type { Mend } from '../../../../shared/job/mend'

/** What every part of the screen gets. */
export interface MendPartProps {
  readonly line: JobLine
  readonly mend: Mend
  /** Another tab has the job, or it was closed. */
  readonly disabled: boolean
  readonly onChange: (change: Partial<Mend>, typing?: string) => void
}
