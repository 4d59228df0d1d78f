import { useMemo, useRef } from 'react'
import type { BlindPoint } from '../../../../shared/opinion/blindPoints'
import type { Listening } from '../../ears/listening'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Choice } from '../../look/widgets/Choice'
import { Peg } from '../../look/widgets/Peg'
import { PointSounds } from '../../sounds/PointSounds'
import { type PanelClip, panelClips, type ShownClips } from '../../sounds/panelClips'
import type { EarsProps } from './earsProps'
import { MARKS, type Mark, markWords } from './markWords'
import { PointNotes } from './PointNotes'
import { useReview } from './useReview'
import { useWalkKeys } from './useWalkKeys'

interface PointWalkProps extends EarsProps {
  /** In the order in which they are heard. */
  readonly points: readonly BlindPoint[]
  readonly chosenPoint: number | null
  readonly onChoose: (point: number) => void
}

/** From point to point: its spectrum, its sound and nothing that was worked out of them; and what one thinks of it. */
export function PointWalk({ job, line, points, chosenPoint, onChoose }: PointWalkProps) {
  const { say } = useSay()
  const { review, change, draft } = useReview(job.id, line.id)
  const heard = useAppState((state) => state.session.heard)
  const listening = useRef<Listening<PanelClip> | null>(null)
  const frame = useRef<HTMLDivElement>(null)
  const at = Math.max(
    0,
    points.findIndex(({ point }) => point === chosenPoint),
  )
  const here = points[at]
  const clips = useMemo(
    () => (here === undefined ? null : plainClips(panelClips(line, heard, here.point).own, here.shown)),
    [line, heard, here],
  )
  const { marks } = review.draft
  const go = (step: 1 | -1) => {
    const to = points[(at + step + points.length) % points.length]
    if (to !== undefined) onChoose(to.point)
  }
  const mark = (value: Mark) => here && draft({ marks: { ...marks, [here.point]: MARKS.indexOf(value) } })
  useWalkKeys(frame, {
    next: () => go(1),
    back: () => go(-1),
    mark: () => here && mark(MARKS[((marks[here.point] ?? -1) + 1) % MARKS.length]!),
    loop: () => loopHere(listening.current),
    play: () => listening.current?.toggle(),
  })
  if (here === undefined || clips === null) return <p>{say('hear_no_clips')}</p>
  const played = ({ sha256 }: PanelClip) => {
    if (sha256 === null) return
    change((before) => ({ ...before, heard: [...new Set([...before.heard, sha256])].sort() }))
  }
  return (
    <div className="stack" ref={frame}>
      <p className="soft">{say('hear_keys')}</p>
      <ul className="hear-points" aria-label={say('label_points_to_hear')}>
        {points.map(({ point, shown }) => (
          <li key={point}>
            <button
              type="button"
              className="hear-point"
              aria-pressed={point === here.point}
              aria-label={say('label_point_marked', { point: shown, mark: markWords(marks[point], say) })}
              onClick={() => onChoose(point)}
            >
              <span aria-hidden="true">
                <Peg point={shown} state={marks[point] === undefined ? 'silent' : 'plain'} />
              </span>
              <span className="hear-mark" aria-hidden="true">
                {'●'.repeat(marks[point] ?? 0)}
              </span>
            </button>
          </li>
        ))}
      </ul>
      <div className="hear-head">
        <h3>{say('label_point', { point: here.shown })}</h3>
        <div className="row">
          <Button onClick={() => go(-1)}>{say('do_point_back')}</Button>
          <Button onClick={() => go(1)}>{say('do_point_next')}</Button>
        </div>
      </div>
      <Choice
        label={say('label_hear_mark')}
        value={marks[here.point] === undefined ? null : MARKS[marks[here.point]!]!}
        options={MARKS.map((value, i) => ({ value, words: markWords(i, say) }))}
        onChange={mark}
      />
      <PointSounds
        key={here.point}
        point={here.shown}
        clips={clips}
        telling={null}
        isBlind={review.blind}
        onPlayed={played}
      >
        {(clip, own) => {
          listening.current = own
          return <PointNotes job={job} line={line} point={here} clip={clip} listening={own} />
        }}
      </PointSounds>
    </div>
  )
}

/** The clips of a point without what the machine found in them, and under the number that is shown. */
function plainClips(own: readonly PanelClip[], shown: number): ShownClips {
  const plain = own
    .filter(({ sha256 }) => sha256 !== null)
    .map((clip) => ({
      ...clip,
      point: shown,
      evidence: clip.evidence === null ? null : { ...clip.evidence, ringList: [] },
    }))
  return {
    on: plain.find(({ air }) => air === 'on') ?? null,
    off: plain.find(({ air }) => air === 'off') ?? null,
    before: null,
    after: null,
  }
}

/** A second from where one is, over and over; or on again. */
function loopHere(listening: Listening<PanelClip> | null): void {
  if (listening === null) return
  const { loop } = listening.get()
  const atS = listening.positionS()
  listening.setLoop(loop === null ? { fromS: atS, toS: atS + 1 } : null)
}
