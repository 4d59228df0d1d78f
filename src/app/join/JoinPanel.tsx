import { useEffect, useRef } from 'react'
import type { JobLine } from '../../../shared/job/job'
import { pointsOnLine } from '../../../shared/sketch/pointsOnLine'
import type { AssignedClip } from '../../../shared/sweep/assignClips'
import { doubledClips } from '../../../shared/sweep/joinClips'
import { PageNotices } from '../frame/PageNotices'
import { useApp, useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Notice } from '../look/widgets/Notice'
import { Panel } from '../look/widgets/Panel'
import { SelectField } from '../look/widgets/SelectField'
import { shownLine } from '../store/selectors/shownLine'
import { JoinClip } from './JoinClip'
import type { Joining, JoinWay } from './joining'
import './JoinPanel.css'

/** Clips that wait for their points. Nothing while none wait for a point of the line on show. */
export function JoinPanel() {
  const line = useAppState(shownLine)
  const joining = useAppState((state) => state.session.joining)
  return (
    <>
      <PageNotices place="join" />
      {line !== null && joining?.lineId === line.id && <JoinTable line={line} joining={joining} />}
    </>
  )
}

const WAYS = [
  ['name', 'label_join_name'],
  ['on', 'label_join_on'],
  ['on_off', 'label_join_on_off'],
  ['off_on', 'label_join_off_on'],
] as const

const MOST_NAMES = 6

function JoinTable({ line, joining }: { readonly line: JobLine; readonly joining: Joining }) {
  const { say, sayKeyed } = useSay()
  const { joiner } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const top = useRef<HTMLDivElement>(null)
  useEffect(() => {
    top.current?.scrollIntoView({ block: 'start' }) // the button that led here is far below
  }, [])
  const points = pointsOnLine(line)
  const { clips, name, leftOut, how, firstPoint, sweepId } = joining
  const rows = line.sweeps.find(({ id }) => id === sweepId)?.clips.map(({ row }) => row) ?? []
  const doubled = new Set(doubledClips(clips, rows))
  const loose = clips.filter(({ point }) => point === null)
  const readyCount = clips.length - loose.length
  const pointOptions = points.map(({ point }) => ({ value: String(point), words: say('label_point_short', { point }) }))
  return (
    <div ref={top} className="join">
      <Panel heading={say('heading_join')}>
        <p>{say('join_intro', { clips: clips.length, name })}</p>
        {leftOut.length > 0 && <p>{say('join_left_out', { files: shortList(leftOut) })}</p>}
        <div className="join-how">
          <SelectField<JoinWay>
            label={say('label_join_way')}
            value={how}
            options={WAYS.map(([value, words]) => ({ value, words: say(words) }))}
            onChange={(next) => joiner.assign(next, firstPoint)}
          />
          {how !== 'name' && (
            <SelectField
              label={say('label_first_point')}
              value={String(firstPoint)}
              options={pointOptions}
              onChange={(next) => joiner.assign(how, Number(next))}
            />
          )}
          {line.sweeps.length > 0 && (
            <SelectField
              label={say('label_join_sweep')}
              value={sweepId ?? ''}
              options={[
                { value: '', words: say('label_own_sweep') },
                ...line.sweeps.map((sweep) => ({
                  value: sweep.id,
                  words: say('label_sweep_go_on', { name: sweep.name }),
                })),
              ]}
              onChange={(next) => joiner.joinTo(next === '' ? null : next)}
            />
          )}
        </div>
        <p className="soft">{say('join_take_hint')}</p>
        <ul className="join-clips">
          {clips.map((clip: AssignedClip) => (
            <JoinClip key={clip.name} clip={clip} isDoubled={doubled.has(clip.name)} pointOptions={pointOptions} />
          ))}
        </ul>
        {loose.length > 0 && (
          <Notice severity="odd">
            <p>{sayKeyed({ key: 'join_loose', values: { files: shortList(loose.map((clip) => clip.name)) } })}</p>
          </Notice>
        )}
        <div className="row">
          <Button
            kind="main"
            disabled={readOnly || readyCount === 0 || doubled.size > 0}
            onClick={() => void joiner.join()}
          >
            {say('do_join', { clips: readyCount })}
          </Button>
          <Button onClick={() => joiner.close()}>{readyCount === 0 ? say('do_leave_clips') : say('do_cancel')}</Button>
        </div>
      </Panel>
    </div>
  )
}

function shortList(names: readonly string[]): string {
  return names.length <= MOST_NAMES ? names.join(', ') : `${names.slice(0, MOST_NAMES).join(', ')}, ...`
}
