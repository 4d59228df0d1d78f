import type { JobLine } from '../../../../shared/job/job'
import { jobTimes } from '../../../../shared/job/jobTimes'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'

const SHOWN = { dateStyle: 'medium', timeStyle: 'short' } as const

/** When what happened; what did not happen yet is left out. */
export function ReportTimes({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const createdS = useAppState((state) => state.job?.createdS ?? 0)
  const { arrivedS, foundS, mendedS, closedS } = jobTimes(createdS, line)
  const rows = [
    [say('label_time_arrived'), arrivedS],
    [say('label_time_found'), foundS],
    [say('label_time_mended'), mendedS],
    [say('label_time_closed'), closedS],
  ] as const
  return (
    <dl className="report-times">
      {rows.map(
        ([words, timeS]) =>
          timeS !== null && (
            <div key={words}>
              <dt>{words}</dt>
              <dd>{new Date(timeS * 1000).toLocaleString([], SHOWN)}</dd>
            </div>
          ),
      )}
    </dl>
  )
}
