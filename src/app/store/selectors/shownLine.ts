import type { JobLine } from '../../../../shared/job/job'
import type { AppState } from '../state'

/** The line on show. */
export function shownLine({ job, session }: AppState): JobLine | null {
  return job?.lines.find((line) => line.id === session.lineId) ?? null
}
