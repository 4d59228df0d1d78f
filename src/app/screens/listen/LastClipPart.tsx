import type { JobClip, JobLine } from '../../../../shared/job/job'
import { isBusy } from '../../../../shared/record/recordingState'
import type { Keyed } from '../../../../shared/words/sentence'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { removeClip } from '../../store/actions/removeClip'
import { shownLine } from '../../store/selectors/shownLine'
import type { AppState } from '../../store/state'
import { useRecorder, useRecorderState } from './useRecorder'

/** Fewer bursts than this are chance. */
const FEWEST_BURSTS = 2

/** What the clip just recorded is worth, and the way to record it again. */
export function LastClipPart() {
  const { say, sayKeyed } = useSay()
  const { store } = useApp()
  const recorder = useRecorder()
  const last = useRecorderState((state) => state.last)
  const busy = useRecorderState((state) => isBusy(state.recording.phase))
  const line = useAppState(shownLine)
  const readOnly = useAppState((state) => state.session.readOnly)
  const clip = line === null || last === null ? null : clipOf(line, last.sweep, last.file)
  const heard = useAppState((state) => heardOf(state, clip))
  if (line === null || last === null || clip === null) return null
  const { row } = clip
  const bursts = heard?.evidence ? heard.evidence.rings.burstRatePerS * heard.evidence.durationS : 0
  const problems: Keyed[] = [
    ...clip.problems,
    ...(heard?.problems ?? []),
    ...(heard?.evidence?.problems ?? []),
    ...(heard?.evidence && row.air === 'on' && bursts < FEWEST_BURSTS
      ? [{ key: 'clip_few_bursts', values: { duration_s: heard.evidence.durationS } }]
      : []),
  ]
  return (
    <Panel heading={say('heading_last_clip')}>
      <p className="listen-last-name">
        {say('label_clip_of', {
          point: row.point,
          air: say(row.air === 'on' ? 'label_on' : 'label_off'),
          take: row.take,
        })}
      </p>
      <div role="status" className="stack-small">
        {heard === undefined && <p className="soft">{say('clip_listening')}</p>}
        {heard?.evidence && problems.length === 0 && (
          <p>{say('clip_good', { bursts: Math.round(bursts), duration_s: heard.evidence.durationS })}</p>
        )}
        {problems.length > 0 && (
          <ul className="stack-small listen-problems">
            {problems.map((problem) => (
              <li key={problem.key}>{sayKeyed(problem)}</li>
            ))}
          </ul>
        )}
      </div>
      <div className="row">
        <Button disabled={busy || readOnly} onClick={() => void recorder.again()}>
          {say('do_again')}
        </Button>
        <Button disabled={busy || readOnly} onClick={() => store.dispatch(removeClip, { lineId: line.id, clip })}>
          {say('do_remove_clip')}
        </Button>
      </div>
    </Panel>
  )
}

function clipOf(line: JobLine, sweep: string, file: string): JobClip | null {
  const clips = line.sweeps.find(({ name }) => name === sweep)?.clips ?? []
  return clips.find(({ row }) => row.file === file) ?? null
}

function heardOf({ session }: AppState, clip: JobClip | null) {
  return clip?.sound ? session.heard[clip.sound.sha256] : undefined
}
